using ScreenStats.Counting.Cubes;

namespace ScreenStats.Tests.PublishedPrograms;

/// <summary>The exports themselves hold what was published, whatever the seed of the invented part.</summary>
public sealed class PublishedProgramTests
{
    [Theory]
    [InlineData(1UL)]
    [InlineData(2UL)]
    public void The_exports_hold_the_published_counts(ulong seed)
    {
        var runs = new PublishedProgram(seed).Runs;
        var valid = runs.Where(run => run.Outcome is Outcome.Negative or Outcome.Positive).ToArray();
        var positive = valid.Where(run => run.Outcome == Outcome.Positive).ToArray();
        var refuted = positive.Where(run => run.FollowUp == FollowUp.Refuted).ToArray();
        var inLot = refuted.Where(run => PublishedProgram.Lot(run.Lot) == PublishedProgram.FaultyLot).ToArray();

        valid.Should().HaveCount(903_408);
        positive.Should().HaveCount(1_322);
        positive.Count(run => run.FollowUp is FollowUp.Confirmed or FollowUp.Refuted).Should().Be(1_103);
        refuted.Should().HaveCount(462);
        inLot.Should().HaveCount(278);
        inLot.Select(run => run.Site).Distinct().Should().HaveCount(2);
        inLot.Should().OnlyContain(run => PublishedProgram.Day(run.Day) >= PublishedProgram.BurstFrom && PublishedProgram.Day(run.Day) <= PublishedProgram.BurstTo);
        runs.Select(run => run.Site).Distinct().Should().HaveCount(537);
        ((double)runs.Count(run => run.Lot < 0) / runs.Length).Should().BeApproximately(1 / 3.0, 0.01);
        runs.GroupBy(run => (run.Site, run.Person)).Min(person =>
        {
            var days = person.Select(run => run.Day).Order().ToArray();
            return days.Zip(days.Skip(1), (one, other) => other - one).DefaultIfEmpty(99).Min();
        }).Should().BeGreaterThan(3, "a specimen taken a day after a run must belong to that run alone");
    }
}
