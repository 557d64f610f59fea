using System.Globalization;
using System.Xml.Linq;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Tests.Charts;

/// <summary>Words of a picture that name a site or a lot tell its whole name, for the script that marks it; nothing else does.</summary>
public class NamedLevelsTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Theory]
    [InlineData("10 %", "Site", "data-site")]
    [InlineData("0", "Lot", "data-lot")]
    [InlineData("flagged", "Lot", "data-lot")]
    public void A_name_that_reads_as_a_number_of_the_axis_or_a_word_of_the_picture_is_told_from_it(string name, string levels, string attribute)
    {
        var chart = LevelChart.Of(
            new ChartFrame("levels", "Levels", "See.", "Described.", "levels"), [new(200, 0.1, 0.06, 0.15, name), new(200, 0.2, 0.15, 0.26, "Quayside", Flagged: true)], 0.1, "levels") with { Levels = Enum.Parse<ChartLevels>(levels) };
        var texts = XElement.Parse(ChartRenderer.Svg(chart)).Descendants(Svg + "text").ToArray();

        texts.Count(text => text.Value == name).Should().Be(2, "it is a name and another word");
        texts.Where(text => text.Attribute(attribute) is not null).Select(text => (text.Value, text.Attribute(attribute)!.Value)).Should().BeEquivalentTo([(name, name), ("Quayside", "Quayside")]);
        // Names stand at the left, in one column.
        var ends = texts.Where(text => text.Attribute(attribute) is not null).Select(text => double.Parse(text.Attribute("x")!.Value, CultureInfo.InvariantCulture) + ChartEnd(text)).ToArray();
        ends[0].Should().BeApproximately(ends[1], 2);
        texts.Attributes().Count(one => one.Name.LocalName.StartsWith("data-", StringComparison.Ordinal)).Should().Be(2);
    }

    [Fact]
    public void Every_picture_of_sites_or_lots_tells_whole_names_and_no_other_picture_any()
    {
        var found = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (program, findings) in Programs.All)
        {
            foreach (var chart in AllPages.Of(findings).SelectMany(group => group.Pages).SelectMany(page => page.Charts.Concat(page.AtTop)))
            {
                var kind = chart.Id.EndsWith("-by-site", StringComparison.Ordinal) || chart.Id.StartsWith("funnel-", StringComparison.Ordinal) || chart.Id.StartsWith("adjusted-", StringComparison.Ordinal) ? "data-site"
                    : chart.Id.EndsWith("-by-lot", StringComparison.Ordinal) ? "data-lot" : "";
                var names = XElement.Parse(ChartRenderer.Svg(chart)).Descendants(Svg + "text").Attributes().Where(one => one.Name.LocalName.StartsWith("data-", StringComparison.Ordinal)).ToArray();
                names.Where(one => one.Name.LocalName != kind).Should().BeEmpty($"{program}: {chart.Id}");
                if (kind.Length > 0 && !chart.Id.StartsWith("funnel-", StringComparison.Ordinal)) names.Should().NotBeEmpty($"{program}: {chart.Id}");
                found.UnionWith(names.Select(one => one.Value));
            }
        }

        found.Should().Contain(new string('a', 300), "a shortened name is told whole").And.Contain("<script>alert(\"x\")</script>").And.Contain(" Tab");
    }

    private static double ChartEnd(XElement text) => double.Parse(text.Attribute("textLength")?.Value ?? "8", CultureInfo.InvariantCulture);
}
