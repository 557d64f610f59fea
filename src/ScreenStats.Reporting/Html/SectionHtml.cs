using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>One analysis as HTML.</summary>
internal static class SectionHtml
{
    /// <summary>Writes the section: what was found, pictures, tables, what they cannot tell, and the method folded away.</summary>
    public static void Write(Markup page, Page section, IReadOnlyDictionary<string, string> pictures)
    {
        page.Open("section", ("aria-labelledby", section.Id)).Element("h3", section.Heading, ("id", section.Id));
        SentenceHtml.Paragraph(page, section.Finding.Sentences.Take(1), "lead");
        SentenceHtml.Paragraphs(page, section.Finding.Sentences.Skip(1));
        if (section.Caution.Length > 0) page.Element("p", section.Caution, ("class", "caution"));
        foreach (var chart in section.Charts)
        {
            page.Open("figure", ("id", "figure-" + chart.Id)).Trusted(pictures[chart.Id]).Open("figcaption")
                .Text(chart.Caption + " Its figures: ").Element("a", $"tables/{chart.TableId}.csv", ("href", $"tables/{chart.TableId}.csv")).Close().Close();
        }

        foreach (var table in section.Tables) TableHtml.Write(page, table);
        page.Trusted("<p><strong>What this cannot tell.</strong> ").Text(section.CannotTell).Trusted("</p>\n");
        page.Open("details").Element("summary", "How these figures were made").Element("p", section.Method);
        MethodsHtml.Line(page, section.Finding.Tables);
        page.Close();
        page.Close();
    }
}
