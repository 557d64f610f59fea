using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Delays;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Delays;

public class DelayAnalysisTests
{
    [Fact]
    public void The_ninetieth_percentile_is_by_nearest_rank_and_the_median_between_the_middle_two()
    {
        var sketch = new ProgramSketch();
        for (var hours = 1; hours <= 10; hours++) sketch.Delay(DelayKind.RunToSpecimen, hours);

        var finding = DelayAnalysis.Of(sketch.Tally()).RunToSpecimen;

        finding.Resulted.Should().Be(10);
        finding.MedianHours.Should().Be(5.5);
        finding.Percentile90Hours.Should().Be(9);
    }

    [Fact]
    public void Unresulted_specimens_are_counted_and_enter_neither_figure()
    {
        var findings = DelayAnalysis.Of(new ProgramSketch()
            .Delay(DelayKind.SpecimenToReport, 20, 3).Delay(DelayKind.SpecimenToReport, null, 2).Tally());

        findings.SpecimenToReport.Resulted.Should().Be(3);
        findings.SpecimenToReport.Unresulted.Should().Be(2);
        findings.SpecimenToReport.MedianHours.Should().Be(20);
        findings.Sentences[^1].Text.Should().Be("2 more specimens have no recorded report and would lengthen these times.");
    }

    [Fact]
    public void Values_of_whole_days_are_said_to_be_so()
    {
        var findings = DelayAnalysis.Of(new ProgramSketch()
            .Delay(DelayKind.RunToSpecimen, 24, 2, wholeDays: true).Delay(DelayKind.RunToSpecimen, -1, 1, "South").Tally());

        findings.RunToSpecimen.WholeDays.Should().Be(2);
        findings.Sentences.Select(sentence => sentence.Text).Should().Contain("2 of these 3 are known to whole days only and stand for 24 hours a day.");
        findings.Groups.Select(group => (group.Level, group.MedianHours)).Should().Equal(("North", 24), ("South", -1));
    }

    [Fact]
    public void Without_a_known_time_the_median_is_undefined_with_a_reason()
    {
        var finding = DelayAnalysis.Of(new ProgramSketch().Tally()).RunToSpecimen;

        finding.MedianHours.Should().BeNull();
        finding.MedianHoursUndefined.Should().NotBeNullOrEmpty();
    }
}
