using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>A tally sorted by the days on which its facts became known.</summary>
internal sealed class ProgramFacts
{
    // Ten years.
    private const int MostDays = 3660;

    // Control swabs of the year before the first screen are known.
    private const int ControlDays = 366;

    private static readonly DayFacts Nothing = new();
    private readonly Dictionary<DateOnly, DayFacts> days = [];
    private readonly Dictionary<(string Site, DateOnly Day), List<Use>> strata = [];

    public ProgramFacts(Tally tally)
    {
        var cells = tally.Cells;
        HasConfirmatory = cells.HasConfirmatory;
        KnowsWhen = !cells.Settlements.IsEmpty || !cells.Notable.Any(run => run.FollowUp is not (FollowUp.None or FollowUp.Pending));
        HasLots = cells.Screens.Any(cell => cell.Lot != Levels.None);
        // Cells are in the order of site, lot and day, so that each stratum's lots come in ordinal order and equal ones together.
        foreach (ref readonly var cell in cells.Screens.AsSpan())
        {
            if (!strata.TryGetValue((cell.Site, cell.Day), out var uses)) strata.Add((cell.Site, cell.Day), uses = []);
            if (uses.Count == 0 || uses[^1].Lot != cell.Lot)
            {
                uses.Add(new Use(cell.Site, cell.Lot));
                Of(cell.Day).Uses.Add(uses[^1]);
            }

            uses[^1].Runs += cell.Runs;
            if (cell.Outcome is Outcome.Inconclusive or Outcome.Invalid) uses[^1].Unusable += cell.Runs;
        }

        foreach (ref readonly var cell in cells.Operators.AsSpan())
        {
            if (cell.Operator != Levels.None) Of(cell.Day).Operators.Add(cell.Operator);
        }

        foreach (ref readonly var cell in cells.Settlements.AsSpan()) Of(cell.Known).Changes.Add(cell);
        foreach (ref readonly var cell in cells.Controls.AsSpan()) Of(cell.Day).Controls.Add(cell);
        foreach (ref readonly var cell in cells.Conduct.AsSpan()) Of(cell.Day).Conduct.Add(cell);
        First = tally.FirstDay;
        // The days go from the first run to the day up to which the data are complete; what becomes of a run by mere lapse of time may come later.
        Last = First is null ? null : Later(tally.LastDay!.Value, cells.DataAsOf is { } until ? DateOnly.FromDateTime(until) : null);
        if (First is { } day)
        {
            // A mistyped year makes no centuries of days without anything.
            First = Later(day, Before(Last!.Value, MostDays));
            Begins = cells.Controls.IsEmpty ? First : Later(Earlier(First.Value, cells.Controls.Min(cell => cell.Day)), Before(First.Value, ControlDays));
        }
    }

    /// <summary>The first day of which anything is known: control swabs may be run before the first screen. Null without a run.</summary>
    public DateOnly? Begins { get; }

    /// <summary>First day with a counted run, or ten years before the last day.</summary>
    public DateOnly? First { get; }

    /// <summary>The day up to which the data are complete, and no earlier than the last counted run.</summary>
    public DateOnly? Last { get; }

    public bool HasConfirmatory { get; }

    /// <summary>Whether the source tells when follow-ups became known.</summary>
    public bool KnowsWhen { get; }

    public bool HasLots { get; }

    public DayFacts On(DateOnly day) => days.GetValueOrDefault(day, Nothing);

    /// <summary>The lots in use at a site on a day.</summary>
    public IReadOnlyList<Use> Stratum(string site, DateOnly day) => strata.TryGetValue((site, day), out var uses) ? uses : [];

    private DayFacts Of(DateOnly day)
    {
        if (!days.TryGetValue(day, out var facts)) days.Add(day, facts = new DayFacts());
        return facts;
    }

    private static DateOnly Before(DateOnly day, int days) => day.DayNumber > days ? day.AddDays(-days) : DateOnly.MinValue;

    private static DateOnly Earlier(DateOnly one, DateOnly other) => one < other ? one : other;

    private static DateOnly Later(DateOnly one, DateOnly? other) => other > one ? other.Value : one;
}
