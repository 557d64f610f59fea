using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Flow;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Flow;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;
using ScreenStats.Reporting.Pages.Flow;

namespace ScreenStats.Reporting.Tests.Charts;

public class FlowChartTests
{
    private static readonly ChartFrame Frame = new("flow", "Flow", "See.", "Described.", "flow");

    [Fact]
    public void Every_box_of_the_findings_is_drawn_once_with_its_count()
    {
        foreach (var (name, findings) in Programs.All.Where(program => program.Findings.Positivity.Tables[0].RowCount > 0))
        {
            if (FlowFigures.Of(findings) is not [var chart]) continue;
            var drawn = chart.Marks.OfType<LabelMark>().Where(label => label.Side == LabelSide.Left).Select(label => label.Text).Order(StringComparer.Ordinal);
            drawn.Should().Equal(findings.Flow.Rows.Select(row => row.Count.ToString("N0", CultureInfo.InvariantCulture)).Order(StringComparer.Ordinal), name);
            Boxes(chart).Length.Should().BeLessThan(drawn.Count());
        }

        FlowFigures.Of(Programs.All[0].Findings).Should().BeEmpty("nothing was counted");
    }

    [Theory]
    [InlineData("7")]
    [InlineData("59,086")]
    [InlineData("hidden")]
    [InlineData("12,345,678")]
    public void Words_and_numbers_stand_in_boxes_that_do_not_touch(string count)
    {
        var findings = Programs.FaultyLot;
        var chart = FlowFigures.Of(findings).Single();
        chart = chart with { Marks = [.. chart.Marks.Select(mark => mark is LabelMark { Side: LabelSide.Left } label ? label with { Text = count } : mark)] };
        var boxes = Boxes(chart);

        foreach (var label in chart.Marks.OfType<LabelMark>())
        {
            var (left, right) = Span(label);
            boxes.Count(box => box.Left < left && right < box.Right && box.Bottom < label.Y && label.Y < box.Top).Should().Be(1, label.Text);
            chart.Marks.OfType<LabelMark>().Where(other => other != label && other.Y == label.Y).Select(Span).Should().OnlyContain(other => other.Right < left || right < other.Left, label.Text);
        }

        for (var one = 0; one < boxes.Length; one++)
        {
            for (var other = one + 1; other < boxes.Length; other++)
            {
                var (a, b) = (boxes[one], boxes[other]);
                (a.Right < b.Left || b.Right < a.Left || a.Top < b.Bottom || b.Top < a.Bottom).Should().BeTrue($"{a} and {b}");
            }
        }

        boxes.Should().OnlyContain(box => box.Left > 0 && box.Right < Chart.Width && box.Top < 0 && box.Bottom > -chart.Height);
    }

    [Fact]
    public void Boxes_are_drawn_alike_and_every_box_but_the_first_ones_is_reached_by_an_arrow()
    {
        var chart = FlowFigures.Of(Programs.FaultyLot).Single();

        chart.Marks.OfType<LineMark>().Should().OnlyContain(line => line.Tone == Tone.Ink && line.Width == 1.5 && !line.Dashed, "neither colour nor stroke means anything");
        chart.Marks.Should().OnlyContain(mark => mark is LineMark || mark is LabelMark);
        var heads = chart.Marks.OfType<LineMark>().Where(line => line.Points.Length == 3 && Math.Abs(line.Points[0].X - line.Points[2].X) + Math.Abs(line.Points[0].Y - line.Points[2].Y) < 15).Select(line => line.Points[1]).ToArray();
        var boxes = Boxes(chart);
        var reached = boxes.Count(box => heads.Any(head => (head.X == box.Left && head.Y < box.Top && head.Y > box.Bottom) || (head.Y == box.Top && head.X > box.Left && head.X < box.Right)));
        reached.Should().Be(boxes.Length - Programs.FaultyLot.Flow.Rows.Count(row => row.ComesFrom.Length == 0));
        heads.Should().HaveCount(reached);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(11)]
    [InlineData(100_000)]
    public void Where_more_than_half_of_its_boxes_are_hidden_one_sentence_stands_in_its_place_else_a_hidden_box_says_so(int threshold)
    {
        foreach (var (name, findings) in Programs.All.Where(program => program.Findings.Flow.Find(FlowKeys.Runs)!.Count > 0))
        {
            var hidden = Hidden(findings, threshold);
            var missing = hidden.Flow.Rows.Count(row => !hidden.Disclosure!.Shows(row, "Count"));
            var page = FlowPage.Of(hidden);
            page.AtTop.IsEmpty.Should().Be(2 * missing > hidden.Flow.Rows.Length, name);
            page.InsteadAtTop.StartsWith("The flow of rows and runs is left out: ", StringComparison.Ordinal).Should().Be(page.AtTop.IsEmpty, name);
            if (page.AtTop is not [var chart]) continue;
            chart.Marks.OfType<LabelMark>().Count(label => label.Text == "hidden").Should().Be(missing, name);
            chart.Description.Split("hidden").Length.Should().BeLessThanOrEqualTo(missing + 1, name);
        }
    }

    [Fact]
    public void The_page_says_at_its_top_that_it_is_left_out_and_nowhere_that_it_stands_there()
    {
        var hidden = Hidden(Programs.FaultyLot, 11);
        var missing = hidden.Flow.Rows.Count(row => !hidden.Disclosure!.Shows(row, "Count"));
        missing.Should().Be(hidden.Flow.Rows.Length);

        var page = Encoding.UTF8.GetString(Report.Files(hidden, new ReportInputs())["report.html"]);
        page.Should().Contain("<p>The flow of rows and runs is left out: ").And.NotContain("Its picture stands at the top").And.NotContain("figure-flow\"");
        FlowPage.Of(Programs.FaultyLot).InsteadAtTop.Should().BeEmpty();
        FlowPage.Of(Programs.All[0].Findings).InsteadAtTop.Should().BeEmpty("nothing was counted");
    }

    private static Findings Hidden(Findings findings, int threshold) =>
        DisclosureControl.Apply(findings with { Settings = findings.Settings with { Report = new Counting.Programs.ReportSettings { SuppressBelow = threshold } } });

    [Fact]
    public void A_bare_picture_begins_at_its_edge()
    {
        var svg = ChartRenderer.Svg(FlowChart.Of(Frame, [new(new FlowBox("Rows", "12"), FlowBand.FlowStep.Start, [])]));

        // The box begins 8 pixels from the left and the top, its words 10 further.
        svg.Should().MatchRegex("transform=\"translate\\(18 23\\)\"[^>]*>Rows<");
        svg.Should().Contain($"font-size=\"{FlowChart.TextSize.ToString(CultureInfo.InvariantCulture)}\"");
    }

    private static (double Left, double Right) Span(LabelMark label)
    {
        var width = ChartText.Measure(label.Text, label.Strong) * label.Size / Chart.TextSize;
        return label.Side == LabelSide.Right ? (label.X + LabelMark.Beside, label.X + LabelMark.Beside + width) : (label.X - LabelMark.Beside - width, label.X - LabelMark.Beside);
    }

    private static ImmutableArray<(double Left, double Top, double Right, double Bottom)> Boxes(Chart chart) =>
        [.. chart.Marks.OfType<LineMark>().Where(line => line.Points.Length == 5 && line.Points[0] == line.Points[4]).Select(line => (line.Points[0].X, line.Points[0].Y, line.Points[2].X, line.Points[2].Y))];
}
