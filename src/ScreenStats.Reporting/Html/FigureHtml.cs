using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Html;

/// <summary>A picture with its caption.</summary>
internal static class FigureHtml
{
    /// <summary>Writes the picture, what to see in it, and where its figures stand.</summary>
    /// <param name="page">The page.</param>
    /// <param name="chart">What is drawn.</param>
    /// <param name="pictures">The finished pictures by the id of their chart.</param>
    /// <param name="table">Where in the page the table of its figures stands.</param>
    public static void Write(Markup page, Chart chart, IReadOnlyDictionary<string, string> pictures, string? table)
    {
        page.Open("figure", ("id", "figure-" + chart.Id)).Trusted(pictures[chart.Id]).Open("figcaption");
        foreach (var sentence in chart.Caption.Sentences)
        {
            SentenceHtml.Inline(page, sentence);
            page.Text(" ");
        }

        page.Text("Its figures: ");
        if (table is not null) page.Element("a", "the table", ("href", "#" + table)).Text("and ");
        page.Element("a", $"tables/{chart.TableId}.csv", ("href", $"tables/{chart.TableId}.csv")).Close().Close();
    }
}
