using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Replay;

namespace ScreenStats.Records.Tests.PersonLog;

public class ReplayTests
{
    /// <summary>The definition: one reading taken back to a day is the reading of what there was on that day.</summary>
    [Fact]
    public void A_reading_taken_back_to_a_day_equals_the_reading_of_what_was_there_then() => Programs.Any.Select(WithoutConflicts).Sample(program =>
    {
        var whole = Tally.FromCells(program.Count().Cells);
        for (var day = First.AddDays(-1); day <= First.AddDays(25); day = day.AddDays(1))
        {
            var then = new SmallProgram(
                program.Settings, [.. program.Runs.Where(run => DateOnly.FromDateTime(run.Local) <= day)],
                program.Specimens?.Where(specimen => new ObviousReport(specimen, program.Settings.Policy).Known <= day).ToList(),
                new StatedMoment(day.ToDateTime(new TimeOnly(23, 59, 59)), null)) { MeaningBits = program.MeaningBits };
            Text(whole.AsOf(day)).Should().Be(Text(Shape(Tally.FromCells(then.Count().Cells).Cells, day)), "of {0}", day);
        }
    }, iter: 250);

    [Fact]
    public void A_tally_without_settlements_cannot_be_taken_back()
    {
        var cells = Refuted().Count().Cells with { Settlements = [] };
        var taken = () => Tally.FromCells(cells).AsOf(First);
        taken.Should().Throw<InvalidOperationException>();
    }

    [Fact]
    public void Two_specimens_reported_in_another_order_than_collected_make_two_changes()
    {
        var program = Refuted();
        var positive = program.Specimens![0] with { Local = First.ToDateTime(new TimeOnly(11, 0)), Result = ConfirmatoryResult.Positive, Reported = First.AddDays(3).ToDateTime(default) };
        var tally = Tally.FromCells((program with { Specimens = [.. program.Specimens, positive] }).Count().Cells);

        tally.Cells.Settlements.Select(cell => (cell.Known.DayNumber - First.DayNumber, cell.Before, cell.MinutesBefore, cell.After, cell.MinutesAfter)).Should().Equal(
            (1, FollowUp.Pending, null, FollowUp.Refuted, 240), (3, FollowUp.Refuted, 240, FollowUp.Confirmed, 180));
        Enumerable.Range(0, 5).Select(after => tally.AsOf(First.AddDays(after)).Screens.Single().FollowUp).Should().Equal(
            FollowUp.Pending, FollowUp.Refuted, FollowUp.Refuted, FollowUp.Confirmed, FollowUp.Confirmed);
        tally.AsOf(First.AddDays(-1)).Screens.Should().BeEmpty();
    }

    [Fact]
    public void A_run_of_which_nothing_came_turns_unverified_by_the_lag_that_was_known_then()
    {
        // Monday 08:00 and 72 hours and the program file's 48: the end of Saturday. A report on Wednesday makes the lag 5 hours: the end of Thursday.
        var alone = Refuted() with { Specimens = [] };
        Tally.FromCells(alone.Count().Cells).Cells.Settlements.Single().Known.Should().Be(First.AddDays(5));
        var other = Refuted().Specimens![0] with { Person = "other", Local = First.AddDays(2).ToDateTime(new TimeOnly(9, 0)), Reported = First.AddDays(2).ToDateTime(new TimeOnly(14, 0)) };
        Tally.FromCells((alone with { Specimens = [other] }).Count().Cells).Cells.Settlements.Single().Known.Should().Be(First.AddDays(3));
    }

    private static readonly DateOnly First = new(2026, 3, 27);

    private static SmallProgram Refuted() => new(
        new ProgramSettings { TimeZone = "UTC" },
        [new("p", First.ToDateTime(new TimeOnly(8, 0)), 0, false, "North", "A1", "k1", "o1", Outcome.Positive, Specimen.Nasal, CollectedBy.Self, false, false, null, null, null, null)],
        [new("p", First.ToDateTime(new TimeOnly(12, 0)), 0, false, ConfirmatoryResult.Negative, SpecimenReason.FollowUp, First.AddDays(1).ToDateTime(default), true, "(none)")],
        null);

    // The one row whose place in the file decides over another day's row.
    private static SmallProgram WithoutConflicts(SmallProgram program) => program with { Runs = [.. program.Runs.Select(run => run with { Id = null })] };

    /// <summary>The cubes of a reading as it stood, in the shape of a replay: audits are not part of that.</summary>
    internal static TallyAsOf Shape(TallyCells cells, DateOnly day) => new()
    {
        Day = day,
        HasConfirmatory = cells.HasConfirmatory,
        Screens = [.. cells.Screens.GroupBy(cell => cell with { FollowUp = cell.Outcome == Outcome.Negative ? FollowUp.None : cell.FollowUp, Runs = 0 })
            .Select(same => same.Key with { Runs = same.Sum(cell => cell.Runs) })
            .OrderBy(cell => cell.Site, Levels.Order).ThenBy(cell => cell.Lot, Levels.Order)
            .ThenBy(cell => (cell.Day, cell.Specimen, cell.Collection, cell.Outcome, cell.FollowUp, cell.Occasion))],
        Operators = [.. cells.Operators.GroupBy(cell => cell with { FollowUp = cell.Outcome == Outcome.Negative ? FollowUp.None : cell.FollowUp, Runs = 0 })
            .Select(same => same.Key with { Runs = same.Sum(cell => cell.Runs) })
            .OrderBy(cell => cell.Operator, Levels.Order).ThenBy(cell => cell.Site, Levels.Order)
            .ThenBy(cell => (cell.Day, cell.Outcome, cell.FollowUp, cell.Occasion))],
        Notable = cells.Notable,
        Settlements = [.. cells.Settlements.Where(cell => cell.Known <= day)],
        Controls = cells.Controls,
        Kits = cells.Kits,
        Conduct = cells.Conduct,
        Repeats = cells.Repeats,
        Headcount = cells.Headcount,
    };

    internal static string Text(TallyAsOf tally)
    {
        var text = new StringBuilder($"{tally.HasConfirmatory}\n");
        Write(tally.Screens);
        Write(tally.Operators);
        Write(tally.Notable);
        Write(tally.Settlements);
        Write(tally.Controls);
        Write(tally.Kits);
        Write(tally.Conduct);
        Write(tally.Repeats);
        Write(tally.Headcount);
        return text.ToString();

        void Write<T>(ImmutableArray<T> cells)
        {
            foreach (var cell in cells) text.Append(CultureInfo.InvariantCulture, $"{cell}\n");
        }
    }

    private readonly record struct ObviousReport(TestSpecimen Specimen, PolicySettings Policy)
    {
        private DateOnly Day => DateOnly.FromDateTime(Specimen.Local);

        private bool IsTooEarly => Specimen.DateOnly || Specimen.ReportedDateOnly ? DateOnly.FromDateTime(Specimen.Reported!.Value) < Day : Specimen.Reported < Specimen.Local;

        public DateOnly Known => Specimen.Reported is { } reported && !IsTooEarly ? DateOnly.FromDateTime(reported)
            : Specimen.DateOnly ? Day.AddDays((int)Math.Ceiling(Policy.ReportLagHours / 24))
            : DateOnly.FromDateTime(Specimen.Local.AddHours(Policy.ReportLagHours));
    }
}
