using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Trends.Words;

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

    /// <summary>The bases of every measure: every run, and before it, where there are such, without flagged lots and without runs because of an outbreak.</summary>
    public static IEnumerable<SeriesBasis> All(Tally tally, TrendCube all, IReadOnlySet<string> refuted, IReadOnlySet<string> invalid)
    {
        var outbreaks = false;
        foreach (var cell in tally.Cells.Screens) outbreaks |= cell.Occasion == Occasion.Outbreak;
        var without = Without(tally, refuted, outbreaks);
        var sound = invalid.SetEquals(refuted) ? without : Without(tally, invalid, outbreaks);
        foreach (var measure in tally.Cells.HasConfirmatory ? new[] { TrendMeasure.Positivity, TrendMeasure.InvalidRuns, TrendMeasure.PredictiveValue } : [TrendMeasure.Positivity, TrendMeasure.InvalidRuns])
        {
            var (cube, lots) = measure == TrendMeasure.InvalidRuns ? (sound, invalid) : (without, refuted);
            var leading = cube is { RunsLeftOut: > 0, Sites.Count: > 0 };
            if (leading) yield return new SeriesBasis(measure, (lots.Count > 0, outbreaks) switch
            {
                (true, true) => TrendBasis.RoutineWithoutFlaggedLots,
                (true, false) => TrendBasis.WithoutFlaggedLots,
                _ => TrendBasis.Routine,
            }, true, cube!);
            yield return new SeriesBasis(measure, TrendBasis.All, !leading, all);
        }
    }

    private static TrendCube? Without(Tally tally, IReadOnlySet<string> lots, bool outbreaks) =>
        lots.Count == 0 && !outbreaks ? null : TrendCube.Of(tally, cell => cell.Occasion != Occasion.Outbreak && !lots.Contains(cell.Lot));
}
