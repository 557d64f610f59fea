using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Positivity;

/// <summary>Positive tests among valid tests.</summary>
internal static class PositivityAnalysis
{
    public static PositivityFindings Of(Tally tally, IReadOnlyList<Slice> slices, PersonSums persons, double confidence)
    {
        var table = PositivityTables.Positivity([.. slices.Select(slice => new PositivityRow(
            slice.Key, slice.Grouping, slice.Level, slice.PeriodStart,
            slice.Positivity(confidence, slice.PersonsOf(persons, PersonMeasure.Positivity, tally.Cells.Period))))]);
        return new PositivityFindings(table, PositivitySentences.Of(table));
    }
}
