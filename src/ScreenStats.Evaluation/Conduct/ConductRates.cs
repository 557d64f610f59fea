using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>Measures of conduct as shares, each part of the program compared with the others.</summary>
internal static class ConductRates
{
    /// <summary>All measures, by program, site, lot and operator as far as the counts go.</summary>
    /// <param name="cells">The cubes.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="unknown">Why a finding of conduct cannot be told; null where it can.</param>
    public static ImmutableArray<ConductRate> Of(TallyCells cells, ProgramSettings settings, Func<ConductKind, string?> unknown)
    {
        var measures = new ConductMeasures(cells, settings);
        var rates = ImmutableArray.CreateBuilder<ConductRate>();
        foreach (var kind in new[] { ConductKind.ReadOutsideWindow, ConductKind.ExpiredLot, ConductKind.BeyondKitContents, ConductKind.WithinIsolation })
        {
            var why = unknown(kind);
            Add(LevelNames.Of(kind), why is null ? measures.Of(kind) : [], why ?? "there is no run of which it could be told", [Grouping.Program, Grouping.Site, Grouping.Lot]);
        }

        Add(ConductMeasures.RepeatNotDone, measures.Repeats(), "no run called for a repeat", [Grouping.Program, Grouping.Site]);
        Add(ConductMeasures.SelfCollected, measures.Collection(), "who collected is not recorded", [Grouping.Program, Grouping.Site, Grouping.Lot]);
        if (cells.Operators.Any(cell => cell.Operator != Levels.None)) Add(ConductMeasures.Unusable, measures.Operators(), "there are no runs", [Grouping.Operator]);
        return rates.ToImmutable();

        void Add(string measure, IEnumerable<ConductCount> counts, string undefined, Grouping[] groupings)
        {
            var all = counts.ToList();
            foreach (var grouping in groupings)
            {
                // Who collects is a way of working, not a fault: what comes of it is in the contrasts.
                var comparisons = grouping == Grouping.Program || measure == ConductMeasures.SelfCollected ? null
                    : Compared(grouping, all);
                foreach (var part in Parts(grouping, all))
                {
                    var counter = new ClusterCounter();
                    foreach (var count in part.Counts) counter.Add(count.Site, count.Day, count.Trials, count.Events);
                    rates.Add(new ConductRate(
                        $"{measure}|{LevelNames.Of(grouping)}|{part.Level}", measure, grouping, part.Level,
                        counter.Proportion(settings.Report.Confidence).Because(undefined), comparisons?.At(part.Level)));
                }
            }
        }
    }

    private static IReadOnlyDictionary<string, LevelComparison> Compared(Grouping grouping, List<ConductCount> counts)
    {
        var levels = new LevelCounts();
        foreach (var count in counts) levels.Add(LevelOf(grouping, count), grouping == Grouping.Site ? "" : count.Site, count.Trials, count.Events);
        return LevelComparisons.Of(levels);
    }

    private static IEnumerable<(string Level, List<ConductCount> Counts)> Parts(Grouping grouping, List<ConductCount> counts) => grouping == Grouping.Program
        ? [("", counts)]
        : counts.GroupBy(count => LevelOf(grouping, count), StringComparer.Ordinal).OrderBy(level => level.Key, Levels.Order).Select(level => (level.Key, level.ToList()));

    private static string LevelOf(Grouping grouping, ConductCount count) => grouping switch
    {
        Grouping.Site => count.Site,
        Grouping.Lot => count.Lot,
        _ => count.Operator,
    };
}
