using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Alarms;

public class AlarmNoteTests
{
    [Theory]
    [InlineData(0, false)]
    [InlineData(7, false)]
    [InlineData(8, true)]
    [InlineData(400, true)]
    public void Exports_that_end_more_than_a_week_before_are_named_as_old(int days, bool said)
    {
        var tally = new ProgramSketch().Runs(Outcome.Negative, 500, site: "East", lot: "a-1").WithoutConfirmatory().Tally();

        var notes = AlarmReplay.At(tally, new ProgramSettings(), ProgramSketch.FirstDay.AddDays(days))!.Notes;

        notes.Any(note => note.StartsWith("The last run in the exports is of 2026-01-05: check that they still arrive.", StringComparison.Ordinal)).Should().Be(said);
    }
}
