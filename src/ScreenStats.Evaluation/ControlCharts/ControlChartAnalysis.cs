using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Lots;
using ScreenStats.Evaluation.Sites;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>Control charts of unusable runs and refuted positives: by period, lot and operator, and of what lies between refuted positives.</summary>
internal static class ControlChartAnalysis
{
    public static ControlChartFindings Of(Tally tally, ProgramSettings settings, IReadOnlyCollection<LotFinding> lots, IReadOnlyCollection<SiteFinding> sites)
    {
        var counts = ChartCounts.Of(tally);
        var charts = new List<ControlChartFinding>();
        int few = 0, beyond = 0;
        foreach (var measure in tally.Cells.HasConfirmatory ? new[] { ChartMeasure.InvalidRuns, ChartMeasure.Refuted } : [ChartMeasure.InvalidRuns])
        {
            var program = ChartSeries.ByPeriod(counts, measure, Grouping.Program, "", counts.Program);
            if (!program.Points.IsEmpty) charts.AddRange(ByPeriod(program, settings));
            var flagged = FlaggedPlaces.Of(measure, lots, sites);
            var bySite = ChartSeries.OfSites(counts, measure, flagged);
            foreach (var side in new[] { bySite, ChartSeries.OfLots(counts, measure, flagged), ChartSeries.OfOperators(counts, measure, flagged) })
            {
                if (side.Points.Length > 1) charts.Add(ShareCharts.Of(side, settings.Report.ControlLimits));
            }

            if (counts.Sites.Count < 2) continue;
            // A site that is worse all the time would look as usual against its own rate, and make the others look good.
            var usual = bySite.Points.Where(point => !flagged.Sites.Contains(point.Name)).ToList();
            var each = counts.Sites.Select(site => ChartSeries.ByPeriod(counts, measure, Grouping.Site, site.Key, site.Value)).Where(Enough)
                .Select(site => site.Around(usual.Where(point => point.Name != site.Level), "other-sites")).ToList();
            var chosen = each.OrderByDescending(site => site.Excess).ThenBy(site => site.Level, Levels.Order).Take(ChartRules.MostPlaces).ToHashSet();
            few += counts.Sites.Count - each.Count;
            beyond += each.Count - chosen.Count;
            foreach (var site in each.Where(chosen.Contains)) charts.AddRange(ByPeriod(site, settings));
        }

        if (tally.Cells.HasConfirmatory) charts.AddRange(Between(tally, counts, ref beyond));
        return new ControlChartFindings([.. charts], few, beyond);
    }

    private static bool Enough(ChartSeries site) => site.Points.Length >= ChartRules.FewestPeriods && site.Events >= ChartRules.FewestEvents;

    private static IEnumerable<ControlChartFinding> ByPeriod(ChartSeries series, ProgramSettings settings)
    {
        var shares = ShareCharts.Of(series, settings.Report.ControlLimits);
        yield return shares;
        if (shares.Centre is not null && series.Events >= ChartRules.FewestForAverage * series.Points.Length && series.Points.Length >= ChartRules.FewestPeriods)
            yield return ShareCharts.Average(series, shares);
    }

    private static List<ControlChartFinding> Between(Tally tally, ChartCounts counts, ref int beyond)
    {
        var charts = new List<ControlChartFinding>();
        if (Rare(counts.Program))
        {
            var all = ChartCounts.Daily(tally, _ => "", new HashSet<string>(StringComparer.Ordinal) { "" });
            if (all.TryGetValue("", out var days)) charts.AddRange(BetweenCharts.Of(Grouping.Program, "", days, counts.FirstPending));
        }

        var periods = Math.Max(1, counts.Starts.Length);
        var sites = counts.Sites.Count < 2 ? [] : counts.Sites.Where(site => Rare(site.Value)).Select(site => (site.Key, Events: site.Value.Sum(period => period.Refuted)));
        var lots = counts.SitesAndLots.Where(both => both.Key.Lot != Levels.None).GroupBy(both => both.Key.Lot, both => both.Value.Counts.Refuted, StringComparer.Ordinal)
            .Select(lot => (lot.Key, Events: lot.Sum())).Where(lot => Rare(lot.Events, periods)).ToList();
        Add(Grouping.Site, [.. sites], cell => cell.Site, ref beyond);
        Add(Grouping.Lot, lots, cell => cell.Lot, ref beyond);
        return charts;

        void Add(Grouping by, List<(string Level, long Events)> places, Func<ScreenCell, string> place, ref int left)
        {
            var chosen = places.OrderByDescending(one => one.Events).ThenBy(one => one.Level, Levels.Order).Take(ChartRules.MostPlaces).Select(one => one.Level).ToHashSet(StringComparer.Ordinal);
            left += places.Count - chosen.Count;
            if (chosen.Count == 0) return;
            foreach (var (level, days) in ChartCounts.Daily(tally, place, chosen).OrderBy(one => one.Key, Levels.Order)) charts.AddRange(BetweenCharts.Of(by, level, days, counts.FirstPending));
        }
    }

    private static bool Rare(TestCounts[] periods) => Rare(periods.Sum(period => period.Refuted), Math.Max(1, periods.Count(period => period.Runs > 0)));

    private static bool Rare(long events, int periods) => events >= ChartRules.FewestBetween && events < ChartRules.MostRare * periods;
}
