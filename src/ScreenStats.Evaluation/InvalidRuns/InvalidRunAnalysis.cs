using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.InvalidRuns;

/// <summary>Inconclusive and invalid runs among all runs.</summary>
internal static class InvalidRunAnalysis
{
    public static InvalidRunFindings Of(Tally tally, IReadOnlyList<Slice> slices, PersonSums persons, double confidence)
    {
        var table = InvalidRunTables.InvalidRuns([.. slices.Select(slice => new InvalidRunRow(
            slice.Key, slice.Grouping, slice.Level, slice.PeriodStart, slice.Inconclusive, slice.Invalid,
            slice.Unusable(confidence, slice.PersonsOf(persons, PersonMeasure.InvalidRuns, tally.Cells.Period))))]);
        return new InvalidRunFindings(table, InvalidRunSentences.Of(table));
    }
}
