using ScreenStats.Evaluation.Alarms;
using ScreenStats.Tests.Synthesis;

namespace ScreenStats.Tests.PublishedPrograms;

/// <summary>The real reader and the alarms on the published program: when would somebody have been told?</summary>
public sealed class PublishedProgramAlarmTests
{
    /// <summary>
    /// The bad lot is the only one in use at its two sites, so the comparison of lots within site and day drops out; the sites' own past shows it.
    /// First runs with it on 27 September 2021, first reports on the evening of the 28th.
    /// </summary>
    [Fact]
    public void The_bad_lot_is_named_on_the_day_of_its_first_refuted_positives_and_nothing_else_ever_is()
    {
        using var folder = new TemporaryFolder();
        new PublishedProgram(1).Write(folder.Path);
        var program = ScreeningProgram.Open(folder.Path);
        var tally = program.Read().Tally;

        var raised = AlarmReplay.Over(tally, program.Settings).SelectMany(day => day.Alarms.Where(alarm => alarm.Since == day.AsOf)).ToList();

        raised.Select(alarm => (alarm.Rule, alarm.Level, alarm.Since)).Should().Equal(
            (AlarmRule.RefutedRise, "site-117", new DateOnly(2021, 9, 28)), (AlarmRule.RefutedRise, "site-402", new DateOnly(2021, 9, 28)));
        raised.Should().OnlyContain(alarm => alarm.Evidence.Text.Contains($"lots {PublishedProgram.FaultyLot} ", StringComparison.Ordinal));
        var reported = tally.Cells.Settlements.Where(cell => cell.Lot == PublishedProgram.FaultyLot && cell.After == Counting.Cubes.FollowUp.Refuted).ToList();
        reported.Where(cell => cell.Known < new DateOnly(2021, 9, 28)).Sum(cell => cell.Runs).Should().Be(0);
        reported.Where(cell => cell.Known <= new DateOnly(2021, 9, 28)).Sum(cell => cell.Runs).Should().Be(136);
        reported.Sum(cell => cell.Runs).Should().Be(PublishedProgram.RefutedInLot);
    }
}
