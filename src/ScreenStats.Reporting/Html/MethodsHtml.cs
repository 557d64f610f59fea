using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>The methods that made the numbers of a report: what each does, its formula, its source, and the tables it stands in.</summary>
internal static class MethodsHtml
{
    /// <summary>Where the part begins.</summary>
    public const string Id = "methods";

    /// <summary>Its heading.</summary>
    public const string Heading = "Methods used in this report";

    /// <summary>Where a method is explained.</summary>
    public static string IdOf(MethodNote note) => "method-" + note.Name;

    /// <summary>Writes every method used.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        page.Open("section", ("aria-labelledby", Id)).Element("h2", Heading, ("id", Id));
        page.Element("p", "Every number in the tables names its method, in a column of its own or in tables/columns.csv. Here is each method of this report, once.");
        page.Open("section").Element("h3", "How numbers are rounded", ("id", "rounding")).Element("p", Rounding.Rule).Close();
        foreach (var (note, tables) in MethodCatalogue.UsedIn(model.Findings.Tables))
        {
            page.Open("section", ("class", "method")).Element("h3", note.Title, ("id", IdOf(note)));
            page.Trusted("<p class=\"note\">In tables: ").Trusted("<code>").Text(note.Name).Trusted("</code></p>\n");
            page.Element("p", note.Meaning);
            foreach (var formula in note.Formulas) page.Element("p", formula, ("class", "formula"));
            page.Trusted("<p class=\"note\">Source: ").Text(note.Source).Trusted(" Used in ");
            for (var index = 0; index < tables.Length; index++)
            {
                if (index > 0) page.Text(index == tables.Length - 1 ? " and " : ", ");
                Link(page, $"tables/{tables[index].Id}.csv", tables[index].Title);
            }

            page.Trusted(".</p>\n").Close();
        }

        page.Close();
    }

    /// <summary>Names the methods of some tables, each with a link to where it is explained.</summary>
    public static void Line(Markup page, IEnumerable<ITable> tables)
    {
        var used = MethodCatalogue.UsedIn(tables);
        if (used.IsEmpty) return;
        page.Trusted("<p class=\"methods\">").Text(used.Length == 1 ? "Method: " : "Methods: ");
        for (var index = 0; index < used.Length; index++)
        {
            if (index > 0) page.Text("; ");
            Link(page, "#" + IdOf(used[index].Note), used[index].Note.Title);
        }

        page.Trusted(".</p>\n");
    }

    private static void Link(Markup page, string address, string text) =>
        page.Trusted($"<a href=\"{Markup.Escape(address)}\">").Text(text).Trusted("</a>");
}
