using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;
using ScreenStats.Reporting.Tests.Pages;

namespace ScreenStats.Reporting.Tests.Charts;

public class CaptionTests
{
    private static readonly (string Name, Findings Findings)[] All =
        [.. Programs.All, ("cadence", CadenceSketch.With(Programs.FaultyLot)), ("worth", WorthSketch.With(Programs.FaultyLot))];

    [Fact]
    public void Every_caption_begins_with_a_finding_and_not_with_an_order_to_look()
    {
        foreach (var (name, chart) in Charts()) chart.Caption.Text.Should().NotMatchRegex(@"(^|[.:;] )(See|Look|Note) ", $"{name}: {chart.Id}").And.MatchRegex(@"^\P{Ll}.*[.:]", $"{name}: {chart.Id}");
    }

    [Fact]
    public void Every_figure_of_a_caption_stands_in_the_findings_where_it_says_with_the_same_value()
    {
        var seen = 0;
        foreach (var (name, findings) in All)
        {
            foreach (var figure in Of(findings).SelectMany(chart => chart.Caption.Sentences).SelectMany(sentence => sentence.Figures).Where(figure => figure.Id != Caption.OfThePage))
            {
                var value = FigureLookup.Find(findings, figure.Id);
                var same = figure.Value.Kind switch
                {
                    CellKind.Text => figure.Value.AsText == Convert.ToString(value, CultureInfo.InvariantCulture),
                    CellKind.Date => figure.Value.AsDate.Equals(value),
                    CellKind.Count or CellKind.Number => figure.Value.AsNumber.Equals(Convert.ToDouble(value, CultureInfo.InvariantCulture)),
                    _ => value is null,
                };
                same.Should().BeTrue($"{name}: {figure.Id} is {value}, the caption says {figure.Value}");
                seen++;
            }
        }

        seen.Should().BeGreaterThan(100);
    }

    private static IEnumerable<(string Name, Chart Chart)> Charts() => All.SelectMany(program => Of(program.Findings).Select(chart => (program.Name, chart)));

    private static IEnumerable<Chart> Of(Findings findings) => AllPages.Of(findings).SelectMany(group => group.Pages).SelectMany(page => page.Charts.Concat(page.AtTop));
}
