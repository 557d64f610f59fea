using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Finds the failed control swabs and what stands between the passed ones around them.</summary>
internal static class ControlBrackets
{
    /// <summary>Every failed control in order of day, time, site and lot.</summary>
    /// <param name="controls">Control cells of a tally, or of one taken back to a day.</param>
    /// <param name="screens">Its screen cells.</param>
    public static ImmutableArray<ControlBracket> Of(ImmutableArray<ControlCell> controls, ImmutableArray<ScreenCell> screens)
    {
        var failed = controls.Where(cell => !cell.IsPassed).ToList();
        if (failed.Count == 0) return [];
        var places = failed.Select(cell => (cell.Site, cell.Lot)).ToHashSet();
        var passed = controls.Where(cell => cell.IsPassed && places.Contains((cell.Site, cell.Lot))).ToLookup(cell => (cell.Site, cell.Lot, cell.Expected));
        var runs = screens.Where(cell => places.Contains((cell.Site, cell.Lot))).ToLookup(cell => (cell.Site, cell.Lot));
        return
        [
            .. failed
                .OrderBy(cell => cell.Day).ThenBy(cell => cell.Time ?? TimeOnly.MinValue).ThenBy(cell => cell.Site, Levels.Order).ThenBy(cell => cell.Lot, Levels.Order)
                .ThenBy(cell => cell.Kit, Levels.Order).ThenBy(cell => cell.Operator, Levels.Order).ThenBy(cell => cell.Expected).ThenBy(cell => cell.Observed)
                .Select(cell => Bracket(cell, passed[(cell.Site, cell.Lot, cell.Expected)], runs[(cell.Site, cell.Lot)])),
        ];
    }

    private static ControlBracket Bracket(ControlCell failed, IEnumerable<ControlCell> passed, IEnumerable<ScreenCell> screens)
    {
        (DateOnly Day, TimeOnly? Time)? last = null, next = null;
        foreach (var one in passed)
        {
            if (Before(one, failed) && (last is not { } latest || Later((one.Day, one.Time), latest))) last = (one.Day, one.Time);
            if (Before(failed, one) && (next is not { } earliest || Later(earliest, (one.Day, one.Time)))) next = (one.Day, one.Time);
        }

        var (runs, positives, negatives) = (0L, 0L, 0L);
        foreach (var cell in screens)
        {
            if ((last is { } from && cell.Day < from.Day) || (next is { } to && cell.Day > to.Day)) continue;
            runs += cell.Runs;
            if (cell.Outcome == Outcome.Positive) positives += cell.Runs;
            else if (cell.Outcome == Outcome.Negative) negatives += cell.Runs;
        }

        var (expected, observed) = (LevelNames.Of(failed.Expected), LevelNames.Of(failed.Observed));
        var when = failed.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + (failed.Time is { } time ? "T" + time.ToString("HH:mm", CultureInfo.InvariantCulture) : "");
        return new ControlBracket
        {
            Key = string.Join('|', failed.Site, failed.Lot, when, failed.Kit, failed.Operator, expected, observed),
            Site = failed.Site,
            Lot = failed.Lot,
            Kit = failed.Kit,
            Operator = failed.Operator,
            Day = failed.Day,
            Time = failed.Time,
            Expected = expected,
            Observed = observed,
            Controls = failed.Runs,
            LastPassedDay = last?.Day,
            LastPassedTime = last?.Time,
            NextPassedDay = next?.Day,
            NextPassedTime = next?.Time,
            Runs = runs,
            Positives = positives,
            Negatives = negatives,
        };
    }

    /// <summary>Whether it is known that one control came before another.</summary>
    private static bool Before(ControlCell first, ControlCell second) =>
        first.Day < second.Day || (first.Day == second.Day && first.Time is { } a && second.Time is { } b && a < b);

    private static bool Later((DateOnly Day, TimeOnly? Time) first, (DateOnly Day, TimeOnly? Time) second) =>
        first.Day > second.Day || (first.Day == second.Day && (first.Time ?? TimeOnly.MinValue) > (second.Time ?? TimeOnly.MinValue));
}
