using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>The cautions, all together.</summary>
internal static class CautionsHtml
{
    /// <summary>Writes the list.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        page.Open("section", ("aria-labelledby", "cautions")).Element("h2", "Cautions", ("id", "cautions")).Open("ul");
        foreach (var caution in model.Findings.Cautions.Items) SentenceHtml.Item(page, caution.Sentence);
        page.Close().Close();
    }
}
