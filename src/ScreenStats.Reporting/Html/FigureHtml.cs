using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Html;

/// <summary>A picture with its caption.</summary>
internal static class FigureHtml
{
    /// <summary>Writes the picture, what to see in it, and where its figures stand.</summary>
    /// <param name="page">The page.</param>
    /// <param name="chart">What is drawn.</param>
    /// <param name="pictures">The finished pictures by the id of their chart.</param>
    /// <param name="section">The section that has its table, where it stands apart from it; empty for its own.</param>
    public static void Write(Markup page, Chart chart, IReadOnlyDictionary<string, string> pictures, string section = "")
    {
        page.Open("figure", ("id", "figure-" + chart.Id)).Trusted(pictures[chart.Id]).Open("figcaption");
        foreach (var sentence in chart.Caption.Sentences)
        {
            SentenceHtml.Inline(page, sentence);
            page.Text(" ");
        }

        page.Text("Its figures: ");
        if (section.Length > 0) page.Element("a", "the table", ("href", "#" + section)).Text("and ");
        page.Element("a", $"tables/{chart.TableId}.csv", ("href", $"tables/{chart.TableId}.csv")).Close().Close();
    }
}
