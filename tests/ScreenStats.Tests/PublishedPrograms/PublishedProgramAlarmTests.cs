using ScreenStats.Evaluation.Alarms;
using ScreenStats.Tests.Synthesis;

namespace ScreenStats.Tests.PublishedPrograms;

/// <summary>The real reader and the alarms on the published program: when would somebody have been told?</summary>
public sealed class PublishedProgramAlarmTests(ITestOutputHelper output)
{
    [Fact]
    public void The_alarm_comes()
    {
        using var folder = new TemporaryFolder();
        new PublishedProgram(1).Write(folder.Path);
        var program = ScreeningProgram.Open(folder.Path);
        var tally = program.Read().Tally;
        var clock = System.Diagnostics.Stopwatch.StartNew();
        var days = AlarmReplay.Over(tally, program.Settings).ToList();
        output.WriteLine($"{days.Count} days in {clock.ElapsedMilliseconds} ms, {tally.Cells.Screens.Length} cells");
        foreach (var day in days)
        foreach (var alarm in day.Alarms.Where(alarm => alarm.Since == day.AsOf))
            output.WriteLine($"{day.AsOf:yyyy-MM-dd} {alarm.Rule} {alarm.Level} {alarm.Evidence.Text}");
        var refuted = tally.Cells.Settlements.Where(cell => cell.Lot == PublishedProgram.FaultyLot && cell.After == Counting.Cubes.FollowUp.Refuted).GroupBy(cell => cell.Known).OrderBy(g => g.Key);
        foreach (var r in refuted) output.WriteLine($"{r.Key:yyyy-MM-dd} {r.Sum(c => c.Runs)}");
    }
}
