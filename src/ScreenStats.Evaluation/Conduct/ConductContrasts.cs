using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>Supervised against self-collected, and kinds of specimen against one another.</summary>
/// <remarks>As with devices: the plain difference, and within the site-weeks that used both; people's design effect is that of the whole program.</remarks>
internal static class ConductContrasts
{
    private static readonly PersonMeasure[] Measures = [PersonMeasure.InvalidRuns, PersonMeasure.Positivity, PersonMeasure.Refuted];

    public static ImmutableArray<ConductContrast> Of(TallyCells cells, PersonSums people, double confidence) =>
    [
        .. Contrasts(Grouping.Collection, cells.Screens.Where(cell => cell.Collection != CollectedBy.NotRecorded), cell => (int)cell.Collection, cell => LevelNames.Of(cell.Collection), people, confidence),
        .. Contrasts(Grouping.Specimen, cells.Screens.Where(cell => cell.Specimen != Specimen.NotRecorded), cell => (int)cell.Specimen, cell => LevelNames.Of(cell.Specimen), people, confidence),
    ];

    private static IEnumerable<ConductContrast> Contrasts(
        Grouping grouping, IEnumerable<ScreenCell> cells, Func<ScreenCell, int> order, Func<ScreenCell, string> name, PersonSums people, double confidence)
    {
        var parts = new SortedDictionary<int, (string Name, KitCounts Counts)>();
        foreach (var cell in cells)
        {
            if (!parts.TryGetValue(order(cell), out var part)) parts.Add(order(cell), part = (name(cell), new KitCounts()));
            part.Counts.Add(cell);
        }

        var levels = parts.Values.ToList();
        for (var first = 0; first < levels.Count; first++)
        {
            for (var second = first + 1; second < levels.Count; second++)
            {
                foreach (var measure in Measures)
                {
                    var (a, b, sums) = (levels[first], levels[second], people.Sums(PersonScope.Program, measure));
                    yield return new ConductContrast(
                        string.Join('|', LevelNames.Of(grouping), a.Name, b.Name, LevelNames.Of(measure)), grouping, a.Name, b.Name, measure,
                        Differences.Crude(a.Counts[measure].Proportion(confidence, sums), b.Counts[measure].Proportion(confidence, sums)),
                        Differences.Within(a.Counts[measure], b.Counts[measure], sums, confidence));
                }
            }
        }
    }
}
