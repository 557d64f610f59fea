using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// A control swab that the program's own rules ask for was not run, or did not pass, by the end of the day on which it was due. It stands until one has passed; the
/// daily one until a day on which the site screens has one.
/// </summary>
internal sealed class ControlMissingRule(ImmutableArray<ControlTrigger> required) : IAlarmRule
{
    private readonly HashSet<Place> passed = [];
    private readonly SortedDictionary<(string By, string Level), (DateOnly Since, long Days)> due =
        new(Comparer<(string By, string Level)>.Create(static (a, b) => Levels.Order.Compare(a.By, b.By) is not 0 and var by ? by : Levels.Order.Compare(a.Level, b.Level)));

    private readonly SortedDictionary<string, (DateOnly Since, long Days)> daily = new(Levels.Order);

    private bool anyControl;
    private bool anyLot;
    private bool anyOperator;

    /// <summary>What is asked for and cannot be judged: nobody knows whether no control was run or none written down.</summary>
    public IEnumerable<string> Notes()
    {
        if (!anyControl && !required.IsEmpty) yield return "No run of a control swab is recorded, so controls that the program's rules ask for cannot be judged.";
        if (anyControl && !anyLot && required.Contains(ControlTrigger.NewLot)) yield return "No lot is recorded with control swabs, so controls of new lots cannot be judged.";
        if (anyControl && !anyOperator && required.Contains(ControlTrigger.NewOperator)) yield return "No operator is recorded with control swabs, so controls of new operators cannot be judged.";
    }

    public void Advance(DateOnly day, DayFacts facts)
    {
        anyControl |= facts.Controls.Count > 0;
        anyLot |= facts.Controls.Any(cell => cell.Lot != Levels.None);
        anyOperator |= facts.Controls.Any(cell => cell.Operator != Levels.None);
        HashSet<string> today = new(Levels.Order);
        foreach (var cell in facts.Controls)
        {
            if (!cell.IsPassed) continue;
            today.Add(cell.Site);
            passed.Add(Place.Site(cell.Site));
            if (cell.Lot != Levels.None) passed.Add(Place.SiteAndLot(cell.Site, cell.Lot));
            if (cell.Operator != Levels.None) passed.Add(Place.Operator(cell.Operator));
        }

        foreach (var site in facts.Uses.Select(use => use.Site).Distinct())
        {
            if (required.Contains(ControlTrigger.NewSite)) Judge(Place.Site(site), day);
            if (!required.Contains(ControlTrigger.Daily)) continue;
            if (today.Contains(site)) daily.Remove(site);
            else daily[site] = daily.TryGetValue(site, out var before) ? (before.Since, before.Days + 1) : (day, 1);
        }

        if (required.Contains(ControlTrigger.NewLot))
        {
            foreach (var use in facts.Uses.Where(use => use.Lot != Levels.None)) Judge(Place.SiteAndLot(use.Site, use.Lot), day);
        }

        if (required.Contains(ControlTrigger.NewOperator))
        {
            foreach (var pseudonym in facts.Operators) Judge(Place.Operator(pseudonym), day);
        }

        foreach (var place in due.Keys.Where(key => passed.Contains(new Place(key.By, key.Level))).ToList()) due.Remove(place);
    }

    public IEnumerable<StandingAlarm> Standing() =>
    [
        .. due.Where(pair => anyControl && (anyLot || pair.Key.By != "site-and-lot") && (anyOperator || pair.Key.By != "operator")).Select(pair => Alarm(new Place(pair.Key.By, pair.Key.Level), pair.Value.Since, AlarmWords.OfStart(pair.Key.By, pair.Value.Since, pair.Value.Days), pair.Value.Days)),
        .. daily.Where(_ => anyControl).Select(pair => Alarm(Place.Site(pair.Key), pair.Value.Since, AlarmWords.OfDaily(pair.Value.Since, pair.Value.Days), pair.Value.Days)),
    ];

    private static StandingAlarm Alarm(Place place, DateOnly since, string evidence, long days) =>
        new(AlarmRule.ControlMissing, place, since, AlarmWords.What(AlarmRule.ControlMissing, place), new AlarmEvidence(evidence, days), AlarmWords.Next(AlarmRule.ControlMissing));

    private void Judge(Place place, DateOnly day)
    {
        if (passed.Contains(place)) return;
        due[(place.By, place.Level)] = due.TryGetValue((place.By, place.Level), out var before) ? (before.Since, before.Days + 1) : (day, 1);
    }
}
