using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Trends.Words;

/// <summary>What a series stands on: the level that wanders or does not, periods that are not complete, positives that wait, clusters.</summary>
internal static class SeriesSentences
{
    public static IEnumerable<Sentence> Of(TrendSeriesFinding series)
    {
        var path = FigurePath.Row("trends.series", series.Key);
        if (series.LevelDeviation == 0)
        {
            var wording = new Wording();
            yield return wording.Sentence($"Taken one by one, the {wording.Count(path + ".periodsSmoothed", series.PeriodsSmoothed)} {TrendWords.Points(series.PeriodsAre, series.PeriodsSmoothed)} that were counted do not wander more than chance makes them: one rate fits all.");
        }

        if (series.PeriodsIncomplete > 0)
        {
            var wording = new Wording();
            var (count, noun) = (wording.Count(path + ".periodsIncomplete", series.PeriodsIncomplete), TrendWords.Points(series.PeriodsAre, series.PeriodsIncomplete));
            var plural = series.PeriodsIncomplete != 1;
            yield return wording.Sentence(series.Measure == TrendMeasure.PredictiveValue && series.Pending > 0
                ? $"The last {count} {noun} of it {(plural ? "are" : "is")} shown and not fitted, since {wording.Count(path + ".pending", series.Pending)} {Figure.Plural(series.Pending, "positive still waits", "positives still wait")} for a result: that is no fall."
                : $"The last {count} {noun} of {TrendWords.Name(series.Measure)} {(plural ? "are" : "is")} not complete, so {(plural ? "they are" : "it is")} shown and not fitted.");
        }

        // A few hundredths change nothing that is read.
        if (series.Deflation >= 1.05)
        {
            var wording = new Wording();
            var why = series.DeflationFrom == "persons" ? "the same people are tested again within a week" : "sites have ups and downs of their own within weeks";
            yield return wording.Sentence($"Before anything was fitted to {TrendWords.Name(series.Measure)}, counts were divided by {wording.Ratio(path + ".deflation", series.Deflation)}, because {why}; the limits allow for {series.FittedBy}s that vary more than that{(series.FittedPoints >= TrendRules.FewestRobust ? " and depend on those before" : "")}.");
        }
    }
}
