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
        ControlTrigger trigger, ImmutableArray<ControlCell> controls, ImmutableArray<ScreenCell> screens, ImmutableArray<OperatorCell> operators)
    {
        var places = new Dictionary<(string, string), Place>();
        Place At(string level, string within)
        {
            if (!places.TryGetValue((level, within), out var place)) places.Add((level, within), place = new Place(level, within));
            return place;
        }

        switch (trigger)
        {
            case ControlTrigger.NewLot:
                foreach (var cell in Passed(controls)) At(cell.Lot, cell.Site).Passed(cell.Day);
                foreach (var cell in screens)
                {
                    if (cell.Lot != Levels.None) At(cell.Lot, cell.Site).Run(cell.Site, cell.Day, cell.Runs);
                }

                break;
            case ControlTrigger.NewOperator:
                foreach (var cell in Passed(controls)) At(cell.Operator, "").Passed(cell.Day);
                foreach (var cell in operators)
                {
                    if (cell.Operator != Levels.None) At(cell.Operator, "").Run(cell.Site, cell.Day, cell.Runs);
                }

                break;
            case ControlTrigger.NewSite:
                foreach (var cell in Passed(controls)) At(cell.Site, cell.Site).Passed(cell.Day);
                foreach (var cell in screens) At(cell.Site, cell.Site).Run(cell.Site, cell.Day, cell.Runs);
                break;
            case ControlTrigger.Daily:
                return Days(controls, screens);
            default:
                throw new ArgumentOutOfRangeException(nameof(trigger), trigger, "Not an occasion for control swabs.");
        }

        return
        [
            .. places.Values.Where(place => place.Site is not null).OrderBy(place => place.Level, Levels.Order).ThenBy(place => place.Within, Levels.Order)
                .Select(place => ControlStart.Of(trigger, place.Level, place.Site!, place.First, place.Control, place.Without)),
        ];
    }

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

    private static ImmutableArray<ControlStart> Days(ImmutableArray<ControlCell> controls, ImmutableArray<ScreenCell> screens)
    {
        var days = new Dictionary<(string, DateOnly), Place>();
        foreach (var cell in screens)
        {
            if (!days.TryGetValue((cell.Site, cell.Day), out var day)) days.Add((cell.Site, cell.Day), day = new Place(cell.Site, ""));
            day.Run(cell.Site, cell.Day, cell.Runs);
        }

        foreach (var cell in Passed(controls))
        {
            if (days.TryGetValue((cell.Site, cell.Day), out var day)) day.Passed(cell.Day);
        }

        return
        [
            .. days.Values.OrderBy(day => day.Level, Levels.Order).ThenBy(day => day.First.DayNumber)
                .Select(day => ControlStart.Of(ControlTrigger.Daily, day.Level, day.Level, day.First, day.Control, day.Control is null ? day.Without : 0)),
        ];
    }

    /// <summary>What starts: with its first run, its first passed control, and its runs before that.</summary>
    private sealed class Place(string level, string within)
    {
        public string Level { get; } = level;

        public string Within { get; } = within;

        /// <summary>The site of the first run; null where there is none.</summary>
        public string? Site { get; private set; }

        public DateOnly First { get; private set; }

        public DateOnly? Control { get; private set; }

        public long Without { get; private set; }

        /// <summary>Takes a passed control; all of them before the runs, but where runs are of one day.</summary>
        public void Passed(DateOnly day)
        {
            if (!(Control <= day)) Control = day;
        }

        public void Run(string site, DateOnly day, long runs)
        {
            if (!(Control <= day)) Without += runs;
            if (Site is not null && (day > First || (day == First && string.CompareOrdinal(site, Site) >= 0))) return;
            (Site, First) = (site, day);
        }
    }
}
