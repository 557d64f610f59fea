using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Trends.Words;

namespace ScreenStats.Evaluation.Trends.Changes;

/// <summary>What a dated change did to a rate, and the caution that goes with it.</summary>
internal static class ChangeSentences
{
    public static IEnumerable<Sentence> Of(TrendFindings findings, TrendSeriesFinding series)
    {
        var rows = findings.Changes.Where(row => row.Measure == series.Measure && row.Basis == series.Basis).ToList();
        foreach (var row in rows.Where(row => row.Kind == TrendChangeKind.Dated))
        {
            // The key of the row for the other sites differs in its kind only.
            var elsewhere = rows.FirstOrDefault(other => other.Kind == TrendChangeKind.DatedElsewhere && other.On == row.On && other.What == row.What && other.LevelRatio.Estimate is not null);
            yield return Of(row, elsewhere, Looked(findings));
        }
    }

    // Each dated change is looked for in every measure: one jump in twenty would be found where there is none.
    private static int Looked(TrendFindings findings) => findings.Changes.Count(row => row is { Kind: TrendChangeKind.Dated, Leads: true, PValue: not null });

    private static Sentence Of(TrendChangeRow row, TrendChangeRow? elsewhere, int looked)
    {
        var (wording, path, name) = (new Wording(), FigurePath.Row("trends.changes", row.Key), TrendWords.Name(row.Measure));
        var what = $"“{wording.Name(path + ".what", row.What)}” ({wording.Day(path + ".on", row.On)}{(row.Sites.Length == 0 ? "" : ", at " + wording.Name(path + ".sites", row.Sites))})";
        if (row.LevelRatio.Estimate is null) return wording.Sentence($"What {what} did to {name} cannot be told: {row.LevelRatio.EstimateUndefined}.");
        var level = row.LevelRatio;
        var clear = level.Lower > 1 ? "higher" : level.Upper < 1 ? "lower" : null;
        var text = $"After {what} {TrendWords.Odds(row.Measure)} were {wording.Ratio(path + ".levelRatio.estimate", level.Estimate)} times those just before ({wording.Limits(path + ".levelRatio", level, wording.Ratio, true)}): "
            + (clear is null || row.PValue is not { } p ? "a jump cannot be told from none"
                : p * looked < 1 - (level.Confidence ?? 0.95) ? $"{clear} than chance explains, also when it is allowed for how many jumps are looked for (p {wording.Add(Figure.Number(path + ".pValue", p, Unit.PValue))})"
                : $"{clear}, but chance may explain it when it is allowed for how many jumps are looked for (p {wording.Add(Figure.Number(path + ".pValue", p, Unit.PValue))})");
        if (row.SlopeBefore.Estimate is { } before && row.SlopeAfter.Estimate is { } after)
        {
            var ratio = row.SlopeRatio;
            var turned = ratio.Lower > 1 ? "faster than before" : ratio.Upper < 1 ? "slower than before, or down" : "which cannot be told from no change";
            text += $"; growth went from {wording.Share(path + ".slopeBefore.estimate", before)} to {wording.Share(path + ".slopeAfter.estimate", after)} a week, {turned}";
        }

        text += ".";
        if (elsewhere is not null)
        {
            var other = FigurePath.Row("trends.changes", elsewhere.Key);
            text += $" At the other sites they were {wording.Ratio(other + ".levelRatio.estimate", elsewhere.LevelRatio.Estimate)} times ({wording.Limits(other + ".levelRatio", elsewhere.LevelRatio, wording.Ratio)}) at the same time.";
        }

        return wording.Sentence(text + " Whatever else changed at that time is in these figures too: they do not show that it was the change's doing.");
    }
}
