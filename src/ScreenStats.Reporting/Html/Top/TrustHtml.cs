using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Html.Tables;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Top;

/// <summary>How far the data can be trusted, at the top of the page: the ledger in one line, and the cautions that these data call for.</summary>
internal static class TrustHtml
{
    /// <summary>The group of pages that has the rest.</summary>
    public const string Group = "trust";

    /// <summary>Writes the part.</summary>
    public static void Write(Markup page, ReportModel model, IReadOnlyDictionary<string, string> pictures)
    {
        page.Open("section", ("aria-labelledby", "data")).Element("h2", "How far the data can be trusted", ("id", "data"));
        SentenceHtml.Paragraph(page, [Ledger(model)], "ledger");
        var called = model.Findings.Cautions.Items.Where(caution => caution.FromData && caution.Id != "small-counts").ToArray();
        if (called.Length > 0)
        {
            page.Open("ul");
            foreach (var caution in called) SentenceHtml.Item(page, caution.Sentence);
            page.Close();
        }

        foreach (var section in model.Groups.SelectMany(group => group.Pages))
        {
            foreach (var chart in section.AtTop) FigureHtml.Write(page, chart, pictures, TableAnchors.Of(section.Tables, model.Groups, chart.TableId));
            if (section.InsteadAtTop.Length > 0) page.Element("p", section.InsteadAtTop);
        }

        page.Trusted("<p class=\"note\">").Trusted($"<a href=\"#{Group}\">").Text("What became of every row, and how much is recorded").Trusted("</a></p>\n");
        page.Close();
    }

    // One line; where a count of it is hidden it says no more than that.
    private static Sentence Ledger(ReportModel model)
    {
        var line = model.Findings.Ledger.Sentences[0];
        return model.Findings.Disclosure is not { } disclosure ? line : disclosure.Seen(line, without: true) ?? new Sentence("How many rows were counted, set aside or left out is not shown, because one of these counts is hidden.");
    }
}
