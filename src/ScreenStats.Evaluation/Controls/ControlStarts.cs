using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Controls;

/// <summary>Whether lots, operators, sites and days started with a passed control swab. Pure: the same on a tally and on one taken back to a day.</summary>
/// <remarks>
/// A control counts where it showed what it should; which of the two kinds it was does not matter. For a lot it must be of the same site and
/// lot, for an operator by that operator, for a site and a day at that site. Runs without a lot, or without an operator, start nothing.
/// </remarks>
internal static class ControlStarts
{
    /// <summary>Every occasion of a trigger, missed or not, in order of level, site and day.</summary>
    /// <param name="trigger">Which occasions.</param>
    /// <param name="controls">Control cells of a tally, or of one taken back to a day.</param>
    /// <param name="screens">Its screen cells.</param>
    /// <param name="operators">Its operator cells.</param>
    public static ImmutableArray<ControlStart> Of(
        ControlTrigger trigger, ImmutableArray<ControlCell> controls, ImmutableArray<ScreenCell> screens, ImmutableArray<OperatorCell> operators) => trigger switch
        {
            ControlTrigger.NewLot => Starts(trigger,
                screens.Where(cell => cell.Lot != Levels.None).Select(cell => ((cell.Lot, cell.Site), cell.Site, cell.Day, cell.Runs)),
                Passed(controls).Select(cell => ((cell.Lot, cell.Site), cell.Day))),
            ControlTrigger.NewOperator => Starts(trigger,
                operators.Where(cell => cell.Operator != Levels.None).Select(cell => ((cell.Operator, ""), cell.Site, cell.Day, cell.Runs)),
                Passed(controls).Select(cell => ((cell.Operator, ""), cell.Day))),
            ControlTrigger.NewSite => Starts(trigger,
                screens.Select(cell => ((cell.Site, cell.Site), cell.Site, cell.Day, cell.Runs)),
                Passed(controls).Select(cell => ((cell.Site, cell.Site), cell.Day))),
            ControlTrigger.Daily => Days(controls, screens),
            _ => throw new ArgumentOutOfRangeException(nameof(trigger), trigger, "Not an occasion for control swabs."),
        };

    /// <summary>Why a trigger cannot be judged; null where it can. Without any control swab recorded nothing is judged: nobody knows whether none was run or none written down.</summary>
    public static string? Unknown(ControlTrigger trigger, ImmutableArray<ControlCell> controls)
    {
        if (controls.IsEmpty) return "no run of a control swab is recorded";
        return trigger switch
        {
            ControlTrigger.NewOperator when controls.All(cell => cell.Operator == Levels.None) => "no operator is recorded with control swabs",
            ControlTrigger.NewLot when controls.All(cell => cell.Lot == Levels.None) => "no lot is recorded with control swabs",
            _ => null,
        };
    }

    private static IEnumerable<ControlCell> Passed(ImmutableArray<ControlCell> controls) => controls.Where(cell => cell.IsPassed);

    private static ImmutableArray<ControlStart> Starts(
        ControlTrigger trigger, IEnumerable<((string, string) Place, string Site, DateOnly Day, long Runs)> runs, IEnumerable<((string, string) Place, DateOnly Day)> passed)
    {
        var first = new Dictionary<(string, string), DateOnly>();
        foreach (var (place, day) in passed)
        {
            if (!first.TryGetValue(place, out var known) || day < known) first[place] = day;
        }

        var starts = new Dictionary<(string, string), (string Site, DateOnly Day, long Without)>();
        foreach (var (place, site, day, count) in runs)
        {
            var without = first.TryGetValue(place, out var control) && control <= day ? 0 : count;
            if (!starts.TryGetValue(place, out var start)) starts.Add(place, (site, day, without));
            else
            {
                var earlier = day < start.Day || (day == start.Day && string.CompareOrdinal(site, start.Site) < 0);
                starts[place] = (earlier ? site : start.Site, earlier ? day : start.Day, start.Without + without);
            }
        }

        return
        [
            .. starts.OrderBy(start => start.Key.Item1, Levels.Order).ThenBy(start => start.Key.Item2, Levels.Order)
                .Select(start => ControlStart.Of(
                    trigger, start.Key.Item1, start.Value.Site, start.Value.Day, first.TryGetValue(start.Key, out var day) ? day : null, start.Value.Without)),
        ];
    }

    private static ImmutableArray<ControlStart> Days(ImmutableArray<ControlCell> controls, ImmutableArray<ScreenCell> screens)
    {
        var passed = Passed(controls).Select(cell => (cell.Site, cell.Day)).ToHashSet();
        return
        [
            .. screens.GroupBy(cell => (cell.Site, cell.Day)).OrderBy(day => day.Key.Site, Levels.Order).ThenBy(day => day.Key.Day)
                .Select(day => (day.Key, Has: passed.Contains(day.Key), Runs: day.Sum(cell => cell.Runs)))
                .Select(day => ControlStart.Of(ControlTrigger.Daily, day.Key.Site, day.Key.Site, day.Key.Day, day.Has ? day.Key.Day : null, day.Has ? 0 : day.Runs)),
        ];
    }
}
