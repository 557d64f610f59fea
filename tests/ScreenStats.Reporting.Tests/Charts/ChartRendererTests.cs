using System.Xml.Linq;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Tests.Charts;

public class ChartRendererTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static readonly Chart[] Charts = [.. Programs.All.SelectMany(program => AllPages.Of(program.Findings)).SelectMany(group => group.Pages).SelectMany(page => page.Charts)];

    [Fact]
    public void The_shipped_font_is_the_one_that_is_used() => ReportFont.Family.Should().Be("Source Sans 3");

    [Fact]
    public void Every_picture_scales_and_has_role_title_and_description()
    {
        Charts.Should().HaveCountGreaterThan(20);
        foreach (var chart in Charts)
        {
            var svg = XElement.Parse(ChartRenderer.Svg(chart));
            svg.Attribute("viewBox")!.Value.Should().Be($"0 0 {Chart.Width} {chart.Height}");
            svg.Attribute("role")!.Value.Should().Be("img");
            svg.Element(Svg + "title")!.Value.Should().Be(chart.Title);
            svg.Element(Svg + "desc")!.Value.Should().NotBeEmpty();
            svg.Attribute("aria-labelledby")!.Value.Split(' ').Should().Equal(svg.Element(Svg + "title")!.Attribute("id")!.Value, svg.Element(Svg + "desc")!.Attribute("id")!.Value);
        }
    }

    [Fact]
    public void Every_label_of_the_model_is_text_in_the_picture()
    {
        foreach (var chart in Charts)
        {
            var texts = XElement.Parse(ChartRenderer.Svg(chart)).Descendants(Svg + "text").Select(text => text.Value.Trim()).ToHashSet();
            var wanted = chart.Marks.OfType<LabelMark>().Select(label => label.Text).Concat(chart.Horizontal.Ticks.Concat(chart.Vertical.Ticks).Select(tick => tick.Label));
            texts.Should().Contain(wanted.Select(text => text.Trim()).Where(text => text.Length > 0));
        }
    }

    [Fact]
    public void Ids_belong_to_the_figure_and_references_to_them_resolve()
    {
        foreach (var chart in Charts)
        {
            var svg = XElement.Parse(ChartRenderer.Svg(chart));
            var ids = svg.DescendantsAndSelf().Attributes("id").Select(id => id.Value).ToArray();
            ids.Should().OnlyHaveUniqueItems().And.AllSatisfy(id => id.Should().StartWith(chart.Id + "-"));
            svg.Descendants().Attributes("clip-path").Select(use => use.Value[5..^1]).Should().BeSubsetOf(ids);
            svg.ToString().Should().NotContain("style=", "the page's policy lets no style through but its own sheet");
        }
    }

    [Fact]
    public void Pictures_drawn_side_by_side_have_the_bytes_of_pictures_drawn_one_by_one()
    {
        var some = Charts.Where((_, index) => index % 5 == 0).Take(6).ToArray();
        var one = some.Select(chart => (ChartRenderer.Svg(chart), ChartRenderer.Png(chart))).ToArray();
        for (var round = 0; round < 2; round++)
        {
            var other = new (string Svg, byte[] Png)[some.Length];
            Parallel.For(0, some.Length, new ParallelOptions { MaxDegreeOfParallelism = 8 }, index => other[index] = (ChartRenderer.Svg(some[index]), ChartRenderer.Png(some[index])));
            for (var index = 0; index < some.Length; index++)
            {
                other[index].Svg.Should().Be(one[index].Item1);
                other[index].Png.AsSpan().SequenceEqual(one[index].Item2).Should().BeTrue();
            }
        }
    }

    [Fact]
    public void Pictures_are_packed_without_transparency()
    {
        // The tenth byte of a PNG's first chunk, which begins behind its mark (8 bytes), length (4) and name (4); 2 is red, green and blue, 6 has transparency too.
        ChartRenderer.Png(Charts[0])[8 + 4 + 4 + 9].Should().Be(2);
    }

    [Fact]
    public void Pictures_are_the_same_under_every_culture()
    {
        var chart = Charts.First(chart => chart.Id == "positivity-by-period");
        var svg = Cultures.Names.Select(culture => Cultures.In(culture, () => ChartRenderer.Svg(chart))).Distinct();
        svg.Should().ContainSingle();
    }
}
