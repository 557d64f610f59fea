using System.Globalization;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends.Growth;
using ScreenStats.Evaluation.Trends.Series;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.SlopeChanges;

namespace ScreenStats.Evaluation.Trends.Changes;

/// <summary>Changes of slope that the counts show.</summary>
internal static class FoundChanges
{
    /// <summary>The line with as many changes as the counts ask for; null where there is too little for one.</summary>
    public static BrokenLineChoice? Choose(FittedSeries series, double confidence)
    {
        if (GrowthFits.TooLittle(series) is not null || series.WithTrials < TrendRules.FewestForChange || series.FewerCounts < TrendRules.FewestEventsForChange) return null;
        var choice = BrokenLine.Choose(series.Timed(), new SlopeChangeOptions
        {
            MostChanges = series.WithTrials < TrendRules.FewestForChanges ? 1 : series.WithTrials < 2 * TrendRules.FewestForChanges ? 2 : 3,
            LeastPeriods = 4,
            Selection = series.WithTrials <= TrendRules.MostPermuted ? SlopeChangeSelection.Permutation : SlopeChangeSelection.StrictInformationCriterion,
            Significance = TrendRules.ChangeSignificance,
            Permutations = 499,
            EnoughAsLarge = 10,
            Scale = DispersionScale.PearsonAtLeastOne,
            Confidence = confidence,
        });
        return choice.Fit.Reason is null ? choice : null;
    }

    public static IEnumerable<TrendChangeRow> Rows(SeriesBasis basis, FittedSeries series, BrokenLineChoice choice)
    {
        var fit = choice.Fit;
        for (var at = 0; at < fit.Changes.Count; at++)
        {
            var change = fit.Changes[at];
            var (before, after) = (fit.Segments[at], fit.Segments[at + 1]);
            var on = series.Day(change.Time);
            var number = at + 1;
            yield return new TrendChangeRow
            {
                Key = $"{basis.Key}|found|{on.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}|{number.ToString(CultureInfo.InvariantCulture)}",
                Measure = basis.Measure,
                Basis = basis.Basis,
                Kind = TrendChangeKind.Found,
                On = on,
                OnLower = change.ProfileLower is { } lower ? series.Day(lower) : null,
                OnUpper = change.ProfileUpper is { } upper ? series.Day(upper) : null,
                What = "",
                Sites = "",
                LevelRatio = EstimateFinding.Undefined("a change of slope is no jump"),
                SlopeBefore = Change(before.Slope, before.Interval, fit.Confidence),
                SlopeAfter = Change(after.Slope, after.Interval, fit.Confidence),
                SlopeRatio = Ratio(change.Difference, change.DifferenceInterval, fit.Confidence),
                PValue = Test(choice, number)?.PValue,
                PValueUndefined = choice.Selection == SlopeChangeSelection.Permutation ? "no test asked for this change alone" : "the number of changes was chosen by a criterion, not by a test",
                Method = TrendNotes.Segments,
                Leads = basis.Leads,
            };
        }
    }

    /// <summary>The test that fewer changes than this one do not do.</summary>
    private static ChangeNumberTest? Test(BrokenLineChoice choice, int number) => choice.Tests.LastOrDefault(test => test.Rejected && test.Fewer == number - 1);

    private static EstimateFinding Change(double slope, Interval limits, double confidence) =>
        new(Math.Exp(slope) - 1, null, Math.Exp(limits.Lower) - 1, Bounded(Math.Exp(limits.Upper) - 1), TrendNotes.Segments, confidence);

    private static EstimateFinding Ratio(double difference, Interval limits, double confidence) =>
        new(Bounded(Math.Exp(difference)), null, Math.Exp(limits.Lower), Bounded(Math.Exp(limits.Upper)), TrendNotes.Segments, confidence);

    private static double? Bounded(double value) => double.IsFinite(value) ? value : null;
}
