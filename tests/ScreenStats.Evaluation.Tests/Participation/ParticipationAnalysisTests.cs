using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Participation;

public class ParticipationAnalysisTests
{
    [Fact]
    public void Runs_per_person_and_days_between_runs_are_summed_up()
    {
        var builder = new TallyCellsBuilder().Add("once", Outcome.Negative);
        foreach (var day in new[] { 0, 7, 14, 28 }) builder.Add("weekly", Outcome.Negative, day: day);
        foreach (var day in new[] { 0, 0, 3 }) builder.Add("twice a day", Outcome.Negative, day: day);

        var found = Evaluator.Evaluate(builder.Tally(), new ProgramSettings()).Participation;

        (found.Persons, found.Runs, found.OneRunOnly, found.Gaps).Should().Be((3, 8, 1, 5));
        (found.MedianRuns, found.TenthPercentileRuns, found.NinetiethPercentileRuns).Should().Be((3, 1, 4));
        // Days 0, 3, 7, 7, 14.
        (found.MedianGapDays, found.NinetiethPercentileGapDays).Should().Be((7, 14));
        found.Rows.Select(row => (row.Measure, row.Value, row.Count)).Should().Equal(
            ("runs-per-person", 1, 1), ("runs-per-person", 3, 1), ("runs-per-person", 4, 1),
            ("days-between-runs", 0, 1), ("days-between-runs", 3, 1), ("days-between-runs", 7, 2), ("days-between-runs", 14, 1));
        found.Rows.Where(row => row.Measure == "days-between-runs").Sum(row => row.Share).Should().BeApproximately(1, 1e-12);
    }

    [Fact]
    public void Nobody_tested_twice_leaves_the_days_between_runs_undefined()
    {
        var found = Evaluator.Evaluate(new TallyCellsBuilder().Add("once", Outcome.Negative).Tally(), new ProgramSettings()).Participation;

        (found.MedianGapDays, found.MedianGapDaysUndefined).Should().Be((null, "nobody was tested twice"));
        found.MedianRuns.Should().Be(1);
    }
}
