using System.Collections.Immutable;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Economics.Decision;

/// <summary>Net benefit of acting on the screen, on no one and on everyone, over thresholds.</summary>
/// <remarks>
/// <para>Net benefit = TP/n - (FP/n) w with w = pt/(1 - pt), pt the threshold; everyone p - (1 - p) w; no one 0. It is counted in true positives for each screen: one found costs at most (1 - pt)/pt
/// people treated for nothing. The threshold is a judgement, not an estimate: show a range.</para>
/// <para>Limits from counts: Wilson's limits of both shares put together with their correlation as parts of one whole (square-and-add); of everyone, Wilson's limits of the
/// prevalence on the same line. They take screens to be independent; where these come in clusters, <see cref="Widened"/> puts widened limits together in the same way.</para>
/// <para>Sources: Vickers AJ, Elkin EB, Med Decis Making 2006;26:565-574; Zou GY, Donner A, Stat Med 2008;27:1693-1702 (from memory).</para>
/// </remarks>
public static class DecisionCurve
{
    /// <summary>The name in tables of net benefit from figures taken as exact.</summary>
    public const string Method = "net-benefit";

    /// <summary>The name in tables of net benefit from counts.</summary>
    public const string CountsMethod = "wilson-square-and-add";

    /// <summary>The name in tables of net benefit from counts that come in clusters.</summary>
    public const string WidenedMethod = "wilson-widened-square-and-add";

    /// <summary>The curve from figures taken as exact.</summary>
    /// <param name="prevalence">The prevalence among those screened, in [0, 1].</param>
    /// <param name="sensitivity">The sensitivity, in [0, 1].</param>
    /// <param name="specificity">The specificity, in [0, 1].</param>
    /// <param name="thresholds">Thresholds, each in [0, 0.999999].</param>
    /// <returns>One point for each threshold, in the order given.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<DecisionPoint> Stated(double prevalence, double sensitivity, double specificity, IEnumerable<double> thresholds)
    {
        Guard.Probability(prevalence);
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        ArgumentNullException.ThrowIfNull(thresholds);
        return
        [
            .. thresholds.Select(threshold =>
            {
                var weight = Weight(threshold);
                return new DecisionPoint(
                    threshold,
                    Estimate.Point((prevalence * sensitivity) - ((1 - prevalence) * (1 - specificity) * weight), Method),
                    Estimate.Point(prevalence - ((1 - prevalence) * weight), Method));
            }),
        ];
    }

    /// <summary>The curve from counts.</summary>
    /// <param name="counts">What was found.</param>
    /// <param name="thresholds">Thresholds, each in [0, 0.999999].</param>
    /// <param name="confidence">The confidence, in (0, 1).</param>
    /// <returns>One point for each threshold, in the order given; undefined without screens.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<DecisionPoint> Of(DecisionCounts counts, IEnumerable<double> thresholds, double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        ArgumentNullException.ThrowIfNull(thresholds);
        return [.. thresholds.Select(threshold => new DecisionPoint(threshold, Screened(counts, Weight(threshold), confidence), Everyone(counts, Weight(threshold), confidence)))];
    }

    /// <summary>The curve from counts whose screens come in clusters, each share widened by its own design effect.</summary>
    /// <param name="found">Screens that found an infected person, of all screens.</param>
    /// <param name="alarmed">Screens that were falsely positive, of the same screens and with the same confidence.</param>
    /// <param name="thresholds">Thresholds, each in [0, 0.999999].</param>
    /// <returns>One point for each threshold, in the order given; of everyone nothing is known. Undefined without screens.</returns>
    /// <exception cref="ArgumentException">The shares are not of the same screens, hold more events than screens together, or differ in their confidence.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A threshold outside its domain.</exception>
    /// <remarks>
    /// As from counts, with limits of <see cref="WidenedInterval"/>. True and false positives may cluster in different places (an outbreak, a faulty lot): each has a design effect of its own. Their
    /// correlation is taken as that of two parts of one whole; where both are rare it hardly matters. With design effects of 1 and 30 clusters or more it equals the curve from counts.
    /// Source: Zou GY, Donner A, Stat Med 2008;27:1693-1702; Rao JNK, Scott AJ, Biometrics 1992;48:577-585 (both from memory).
    /// </remarks>
    public static ImmutableArray<DecisionPoint> Widened(WidenedEstimate found, WidenedEstimate alarmed, IEnumerable<double> thresholds)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(alarmed);
        ArgumentNullException.ThrowIfNull(thresholds);
        if (found.Trials != alarmed.Trials || found.Confidence != alarmed.Confidence || found.Trials - found.Successes < alarmed.Successes)
            throw new ArgumentException("Both shares must be of the same screens, exclude each other and have the same confidence.", nameof(alarmed));
        return
        [
            .. thresholds.Select(threshold =>
            {
                var weight = Weight(threshold);
                var screened = found.Interval is { } some && alarmed.Interval is { } others
                    ? Together(found.Successes, alarmed.Successes, found.Trials, some, others, weight, WidenedMethod, found.Confidence) : Estimate.Undefined(UndefinedReason.NoTrials);
                return new DecisionPoint(threshold, screened, Estimate.Undefined(UndefinedReason.InfectedUnknown));
            }),
        ];
    }

    /// <summary>The thresholds at which acting on the screen beats acting on no one and on everyone.</summary>
    /// <param name="prevalence">The prevalence among those screened, in [0, 1].</param>
    /// <param name="sensitivity">The sensitivity, in [0, 1].</param>
    /// <param name="specificity">The specificity, in [0, 1].</param>
    /// <returns>From the chance of infection after a negative screen to that after a positive one; null where there is no such range or no such screen can occur.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Interval? UsefulThresholds(double prevalence, double sensitivity, double specificity)
    {
        var after = PredictiveValue.Positive(sensitivity, specificity, prevalence).Value;
        var cleared = PredictiveValue.Negative(sensitivity, specificity, prevalence).Value;
        return after is { } high && cleared is { } free && high > 1 - free ? new Interval(1 - free, high) : null;
    }

    private static Estimate Screened(DecisionCounts counts, double weight, double confidence)
    {
        if (counts.Screens == 0) return Estimate.Undefined(UndefinedReason.NoTrials);
        var found = ProportionInterval.Wilson(counts.TruePositives, counts.Screens, confidence).Interval.GetValueOrDefault();
        var alarmed = ProportionInterval.Wilson(counts.FalsePositives, counts.Screens, confidence).Interval.GetValueOrDefault();
        return Together(counts.TruePositives, counts.FalsePositives, counts.Screens, found, alarmed, weight, CountsMethod, confidence);
    }

    private static Estimate Together(long truePositives, long falsePositives, double screens, Interval found, Interval alarmed, double weight, string method, double confidence)
    {
        var (p, q) = (truePositives / screens, falsePositives / screens);

        // Two parts of one whole: the correlation is -root(p q/((1 - p)(1 - q))), and counts against the difference.
        var together = p < 1 && q < 1 ? Math.Sqrt(p * q / ((1 - p) * (1 - q))) : 0;
        var (down, up) = (p - found.Lower, found.Upper - p);
        var (more, less) = (weight * (alarmed.Upper - q), weight * (q - alarmed.Lower));
        var value = p - (weight * q);
        var lower = value - Math.Sqrt((down * down) + (more * more) + (2 * together * down * more));
        var upper = value + Math.Sqrt((up * up) + (less * less) + (2 * together * up * less));
        return Estimate.Of(value, new Interval(Math.Max(lower, -weight), Math.Min(upper, 1)).Including(value), method, confidence);
    }

    private static Estimate Everyone(DecisionCounts counts, double weight, double confidence)
    {
        if (counts.Infected is not { } infected) return Estimate.Undefined(UndefinedReason.InfectedUnknown);
        if (ProportionInterval.Wilson(infected, counts.Screens, confidence).Interval is not { } limits) return Estimate.Undefined(UndefinedReason.NoTrials);
        double Net(double share) => share - ((1 - share) * weight);
        var value = Net((double)infected / counts.Screens);
        return Estimate.Of(value, new Interval(Net(limits.Lower), Net(limits.Upper)).Including(value), CountsMethod, confidence);
    }

    private static double Weight(double threshold)
    {
        if (!(threshold is >= 0 and <= 0.999999)) throw new ArgumentOutOfRangeException(nameof(threshold), threshold, "A threshold must lie between 0 and 0.999999.");
        return threshold / (1 - threshold);
    }
}
