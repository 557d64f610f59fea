using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.IntervalCases;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.IntervalCases;

public class IntervalCaseAnalysisTests
{
    [Fact]
    public void Days_ascend_and_cumulate_to_the_total()
    {
        var findings = IntervalCaseAnalysis.Of(new ProgramSketch().IntervalCases(4, 2).IntervalCases(1, 3).IntervalCases(4, 1).Tally(), 0.95);

        findings.Days.Select(day => (day.DaysSinceRun, day.Specimens, day.Cumulative)).Should().Equal((1, 3, 3), (4, 3, 6));
        findings.Total.Should().Be(6);
        findings.MedianDays.Should().Be(2.5);
    }

    [Fact]
    public void It_is_always_said_that_they_are_no_part_of_sensitivity()
    {
        foreach (var tally in new[] { new ProgramSketch().Tally(), new ProgramSketch().IntervalCases(1, 1).Tally(), new ProgramSketch().WithoutConfirmatory().Tally() })
        {
            IntervalCaseAnalysis.Of(tally, 0.95).Sentences[^1].Text.Should().StartWith("Interval cases are never part of sensitivity, specificity or negative predictive value");
        }
    }

    [Fact]
    public void Without_any_the_median_is_null_and_the_table_empty()
    {
        var findings = IntervalCaseAnalysis.Of(new ProgramSketch().Tally(), 0.95);

        findings.MedianDays.Should().BeNull();
        findings.Table.RowCount.Should().Be(0);
    }

    [Fact]
    public void Program_sensitivity_is_what_screening_found_of_all_that_came_to_light()
    {
        var findings = IntervalCaseAnalysis.Of(
            new ProgramSketch().Runs(Outcome.Positive, 50, FollowUp.Confirmed).Runs(Outcome.Inconclusive, 10, FollowUp.Confirmed, "South").Runs(Outcome.Negative, 900)
                .IntervalCases(1, 15).IntervalCases(9, 5).Tally(), 0.95);

        findings.ScreenDetected.Should().Be(60);
        findings.ProgramSensitivity.Estimate.Should().Be(0.75);
        findings.Days.Select(day => day.ProgramSensitivity.Estimate).Should().Equal(0.8, 0.75);

        // Wilson, 60 of 80 (from the formula: centre and half width by hand).
        findings.ProgramSensitivity.Lower.Should().BeApproximately(0.645_2, 5e-4);
        findings.ProgramSensitivity.Upper.Should().BeApproximately(0.832_0, 5e-4);
        findings.Sentences.Should().Contain(sentence => sentence.Text.Contains("only where people go for a test", StringComparison.Ordinal));
        IntervalCaseAnalysis.Of(new ProgramSketch().Tally(), 0.95).ProgramSensitivity.EstimateUndefined.Should().Be("no case was found, by screening or between screens");
    }
}
