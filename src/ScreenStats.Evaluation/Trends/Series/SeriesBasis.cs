using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>The runs of one basis of a measure.</summary>
/// <param name="Measure">What is followed.</param>
/// <param name="Basis">Which runs.</param>
/// <param name="Leads">Whether it is told first.</param>
/// <param name="Cube">Its runs.</param>
internal sealed record SeriesBasis(TrendMeasure Measure, TrendBasis Basis, bool Leads, TrendCube Cube)
{
    /// <summary>What tells it from the others.</summary>
    public string Key => $"{TrendWords.Of(Measure)}|{TrendWords.Of(Basis)}";

    /// <summary>The bases of every measure, those that lead first.</summary>
    public static IEnumerable<SeriesBasis> All(Tally tally, TrendCube all, IReadOnlySet<string> refuted, IReadOnlySet<string> invalid)
    {
        var without = refuted.Count > 0 ? TrendCube.Of(tally, cell => !refuted.Contains(cell.Lot)) : null;
        var sound = invalid.Count == 0 ? null : invalid.SetEquals(refuted) ? without : TrendCube.Of(tally, cell => !invalid.Contains(cell.Lot));
        foreach (var measure in tally.Cells.HasConfirmatory ? new[] { TrendMeasure.Positivity, TrendMeasure.InvalidRuns, TrendMeasure.PredictiveValue } : [TrendMeasure.Positivity, TrendMeasure.InvalidRuns])
        {
            var left = measure == TrendMeasure.InvalidRuns ? sound : without;
            if (left is not null && left.RunsLeftOut > 0 && left.Sites.Count > 0) yield return new SeriesBasis(measure, TrendBasis.WithoutFlaggedLots, true, left);
            else left = null;
            yield return new SeriesBasis(measure, TrendBasis.All, left is null, all);
        }
    }
}
