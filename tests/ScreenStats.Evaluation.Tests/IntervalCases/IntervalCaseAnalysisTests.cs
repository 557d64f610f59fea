using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.IntervalCases;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.IntervalCases;

public class IntervalCaseAnalysisTests
{
    [Fact]
    public void Days_ascend_and_cumulate_to_the_total()
    {
        var findings = IntervalCaseAnalysis.Of(new ProgramSketch().IntervalCases(4, 2).IntervalCases(1, 3).IntervalCases(4, 1).Tally());

        findings.Days.Select(day => (day.DaysSinceRun, day.Specimens, day.Cumulative)).Should().Equal((1, 3, 3), (4, 3, 6));
        findings.Total.Should().Be(6);
        findings.MedianDays.Should().Be(2.5);
    }

    [Fact]
    public void It_is_always_said_that_they_are_no_part_of_sensitivity()
    {
        foreach (var tally in new[] { new ProgramSketch().Tally(), new ProgramSketch().IntervalCases(1, 1).Tally(), new ProgramSketch().WithoutConfirmatory().Tally() })
        {
            IntervalCaseAnalysis.Of(tally).Sentences[^1].Text.Should().StartWith("Interval cases are never part of sensitivity, specificity or negative predictive value");
        }
    }

    [Fact]
    public void Without_any_the_median_is_null_and_the_table_empty()
    {
        var findings = IntervalCaseAnalysis.Of(new ProgramSketch().Tally());

        findings.MedianDays.Should().BeNull();
        findings.Table.RowCount.Should().Be(0);
    }
}
