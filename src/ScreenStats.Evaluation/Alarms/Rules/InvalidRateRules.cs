using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>
/// The two rules of the invalid-run rate, by site and by lot. Sites are judged first: runs at a site with such an alarm, that of the day included, are left out of the
/// lots, so that a clumsy site does not make its lots look bad.
/// </summary>
internal sealed class InvalidRateRules(AlarmSettings settings) : IAlarmRule
{
    private const double LowestRate = 0.0005;
    private readonly InvalidEvidence sitesAbove = new(settings, Place.Site);
    private readonly InvalidEvidence lotsAbove = new(settings, Place.Lot);
    private readonly InvalidRise sitesRisen = new(settings, Place.Site);
    private readonly InvalidRise lotsRisen = new(settings, Place.Lot);
    private readonly HashSet<string> clumsy = new(Levels.Order);
    private DateOnly? first;
    private (long Runs, long Unusable) baseline;

    /// <summary>The program's ordinary rate, (x + 1/2) / (n + 1) of the first days but at least 1 in 2,000; null until they are over.</summary>
    public double? BaselineRate { get; private set; }

    public void Advance(DateOnly day, DayFacts facts)
    {
        if (facts.Uses.Count > 0) first ??= day;
        if (first is null) return;
        var inBaseline = day.DayNumber - first.Value.DayNumber < settings.BaselineDays;
        if (!inBaseline && BaselineRate is null)
        {
            BaselineRate = Math.Max(LowestRate, (baseline.Unusable + 0.5) / (baseline.Runs + 1.0));
            sitesRisen.Begin(BaselineRate.Value, (double)baseline.Runs / settings.BaselineDays);
            lotsRisen.Begin(BaselineRate.Value, (double)baseline.Runs / settings.BaselineDays);
        }

        var sites = Sums(facts.Uses, use => use.Site);
        if (inBaseline) baseline = (baseline.Runs + sites.Values.Sum(sum => sum.Runs), baseline.Unusable + sites.Values.Sum(sum => sum.Unusable));
        sitesAbove.Advance(day, sites);
        sitesRisen.Advance(day, sites);
        clumsy.Clear();
        clumsy.UnionWith(sitesAbove.Standing().Concat(sitesRisen.Standing()).Select(alarm => alarm.Place.Level));
        var lots = Sums(facts.Uses.Where(use => use.Lot != Levels.None && !clumsy.Contains(use.Site)), use => use.Lot);
        lotsAbove.Advance(day, lots);
        lotsRisen.Advance(day, lots);
    }

    /// <summary>A place whose rate is proven to be above the limit is not said to have risen as well.</summary>
    public IEnumerable<StandingAlarm> Standing()
    {
        List<StandingAlarm> above = [.. sitesAbove.Standing(), .. lotsAbove.Standing()];
        return [.. above, .. sitesRisen.Standing().Concat(lotsRisen.Standing()).Where(risen => above.All(alarm => alarm.Place != risen.Place))];
    }

    private static SortedDictionary<string, (long Runs, long Unusable)> Sums(IEnumerable<Use> uses, Func<Use, string> level)
    {
        var sums = new SortedDictionary<string, (long Runs, long Unusable)>(Levels.Order);
        foreach (var use in uses)
        {
            var (runs, unusable) = sums.GetValueOrDefault(level(use));
            sums[level(use)] = (runs + use.Runs, unusable + use.Unusable);
        }

        return sums;
    }
}
