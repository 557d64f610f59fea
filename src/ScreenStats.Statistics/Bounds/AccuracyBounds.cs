using System.Collections.Immutable;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Bounds;

/// <summary>What the counts alone prove: bounds of a screen's accuracy with no assumption on the runs that were not verified.</summary>
/// <remarks>
/// Every unverified run may have been infected or not. Source: Manski CF, Partial Identification of Probability Distributions, 2003, chapters 1-3
/// (from memory), for the idea; the closed forms follow from the box of <see cref="AccuracyRegion"/>, and are checked against a linear program.
/// </remarks>
public static class AccuracyBounds
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "no-assumption-bounds";

    /// <summary>The bounds where the confirmatory test's word is the truth.</summary>
    /// <param name="counts">The counts.</param>
    /// <param name="confidence">Confidence in (0, 1) of the intervals.</param>
    /// <returns>The joint region with the bounds of each figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static AccuracyRegion Of(VerificationCounts counts, double confidence = 0.95) => Of(counts, ConfirmatoryAccuracy.Perfect, confidence);

    /// <summary>The bounds with a stated accuracy of the confirmatory test.</summary>
    /// <param name="counts">The counts.</param>
    /// <param name="confirmatory">Limits of the confirmatory test's sensitivity and specificity.</param>
    /// <param name="confidence">Confidence in (0, 1) of the intervals.</param>
    /// <returns>
    /// The joint region with the bounds of each figure; all undefined where the confirmatory test may be no better than chance.
    /// </returns>
    /// <exception cref="ArgumentNullException">No statement of the confirmatory test.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// <para>Of m verified runs with c confirmed, (c - (1 - P) m)/(S + P - 1) are infected where the confirmatory test has sensitivity S and specificity
    /// P; the least over the limits is at (highest S, lowest P), the greatest at (lowest S, highest P), both cut to 0..m. Unverified runs
    /// add 0 to all of them. With infected positives in [l1, u1] and infected negatives in [l0, u0], of n1 and n0: Se in [l1/(l1 + u0), u1/(u1 + l0)],
    /// Sp in [(n0 - u0)/(n0 - u0 + n1 - l1), (n0 - l0)/(n0 - l0 + n1 - u1)], prevalence in [(l1 + l0)/N, (u1 + u0)/N], positive predictive value
    /// in [l1/n1, u1/n1], negative in [1 - u0/n0, 1 - l0/n0].</para>
    /// <para>Each bound is a ratio of linear forms A/B of multinomial counts n_k, with variance Σ n_k (α_k - t β_k)²/B². The interval for the figure is
    /// [lower - C s_lower, upper + C s_upper] with Φ(C + (upper - lower)/max(s)) - Φ(-C) = confidence: Imbens GW, Manski CF, Econometrica
    /// 2004;72:1845-1857 (formula from memory). Clipped to [0, 1]. A bound at 0 or 1 has no standard error of its own; towards the inside it
    /// takes Wilson's limit with the same C. Stated limits of the confirmatory test are taken as certain. Runs count as independent.</para>
    /// </remarks>
    public static AccuracyRegion Of(VerificationCounts counts, ConfirmatoryAccuracy confirmatory, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(confirmatory);
        Guard.Confidence(confidence);
        var cells = CellForms.Of(counts);
        if (!confirmatory.Informs)
        {
            return new AccuracyRegion(
                counts, confirmatory, confidence, new Interval(0, counts.Positives), new Interval(0, counts.Negatives), true, true,
                [.. Enum.GetValues<AccuracyMeasure>().Select(measure => new BoundedFigure(measure, UndefinedReason.TestNoBetterThanChance))]);
        }

        var box = InfectedBox.Of(cells, confirmatory);
        var figures = Enum.GetValues<AccuracyMeasure>().Select(measure => Figure(measure, cells, box, confidence)).ToImmutableArray();
        return new AccuracyRegion(
            counts, confirmatory, confidence,
            new Interval(cells.Total(box.PositivesLow), cells.Total(box.PositivesHigh)),
            new Interval(cells.Total(box.NegativesLow), cells.Total(box.NegativesHigh)),
            box.PositivesCompatible, box.NegativesCompatible, figures);
    }

    /// <summary>How the bounds narrow with each further batch of audited negatives.</summary>
    /// <param name="counts">The counts so far.</param>
    /// <param name="batch">How many negatives each batch audits, at least 1; 100 is usual.</param>
    /// <param name="batches">How many batches, 1 to 1000.</param>
    /// <param name="missedShare">The share of the further audited negatives that will be found missed, in [0, 1].</param>
    /// <returns>The bounds now and after each batch; the list ends early where every negative is audited.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// The bounds of <see cref="Of(VerificationCounts, double)"/> at the counts expected then. Whatever the audits find, each one takes 1 / n0 off the width of
    /// the negative predictive value's bounds and 1 / N off the prevalence's; those of the sensitivity depend on what is found.
    /// </remarks>
    public static ImmutableArray<AuditGain> AfterAudits(VerificationCounts counts, long batch, int batches, double missedShare)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(batch, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(batches, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(batches, 1000);
        Guard.Probability(missedShare);
        var gains = ImmutableArray.CreateBuilder<AuditGain>();
        var left = counts.Negatives - counts.VerifiedNegatives;
        for (long step = 0; step <= batches; step++)
        {
            var added = batch > left / Math.Max(1, step) ? Math.Min(left, (double)batch * step) : batch * step;
            var found = added * missedShare;
            var cells = CellForms.Of(counts, counts.Missed + found, counts.Agreed + (added - found));
            var box = InfectedBox.Of(cells, ConfirmatoryAccuracy.Perfect);
            var bounds = Enum.GetValues<AccuracyMeasure>().Select(measure => Ends(measure, cells, box)).ToArray();
            gains.Add(new AuditGain(counts.VerifiedNegatives + (long)added, counts.Missed + found, bounds[0], bounds[1], bounds[2], bounds[3], bounds[4]));
            if (added >= left) break;
        }

        return gains.ToImmutable();
    }

    private static BoundedFigure Figure(AccuracyMeasure measure, CellForms cells, InfectedBox box, double confidence)
    {
        if (Ends(measure, cells, box) is not { } bounds) return new BoundedFigure(measure, Why(measure));
        var (low, high) = Ratios(measure, box);
        var lowerError = cells.StandardError(low, bounds.Lower);
        var upperError = cells.StandardError(high, bounds.Upper);
        var critical = ImbensManski.CriticalValue(bounds.Width, Math.Max(lowerError, upperError), confidence);
        var lower = lowerError > 0 ? bounds.Lower - (critical * lowerError) : Inward(bounds.Lower, 1, cells.Total(low.Whole), critical);
        var upper = upperError > 0 ? bounds.Upper + (critical * upperError) : 1 - Inward(1 - bounds.Upper, 1, cells.Total(high.Whole), critical);
        return new BoundedFigure(
            measure, bounds, lowerError, upperError, critical, new Interval(Math.Clamp(Math.Min(lower, bounds.Lower), 0, 1), Math.Clamp(Math.Max(upper, bounds.Upper), 0, 1)));
    }

    // Wilson's lower limit of a share of 1 out of n trials; nothing lies below 0.
    private static double Inward(double bound, double edge, double trials, double critical) =>
        bound < edge ? bound : trials / (trials + (Math.Max(0, critical) * Math.Max(0, critical)));

    private static Interval? Ends(AccuracyMeasure measure, CellForms cells, InfectedBox box)
    {
        var (low, high) = Ratios(measure, box);
        var lower = cells.Value(low);
        var upper = cells.Value(high);
        // Where one end has nobody to count over, everybody there can be comes from the other end.
        return (lower ?? upper, upper ?? lower) is ({ } least, { } most) ? new Interval(Math.Min(least, most), Math.Max(least, most)) : null;
    }

    private static (Ratio Low, Ratio High) Ratios(AccuracyMeasure measure, InfectedBox box)
    {
        var positives = CellForms.Positives;
        var negatives = CellForms.Negatives;
        return measure switch
        {
            AccuracyMeasure.Sensitivity => (
                new Ratio(box.PositivesLow, box.PositivesLow.Plus(box.NegativesHigh)),
                new Ratio(box.PositivesHigh, box.PositivesHigh.Plus(box.NegativesLow))),
            AccuracyMeasure.Specificity => (
                new Ratio(negatives.Minus(box.NegativesHigh), negatives.Minus(box.NegativesHigh).Plus(positives.Minus(box.PositivesLow))),
                new Ratio(negatives.Minus(box.NegativesLow), negatives.Minus(box.NegativesLow).Plus(positives.Minus(box.PositivesHigh)))),
            AccuracyMeasure.Prevalence => (
                new Ratio(box.PositivesLow.Plus(box.NegativesLow), positives.Plus(negatives)),
                new Ratio(box.PositivesHigh.Plus(box.NegativesHigh), positives.Plus(negatives))),
            AccuracyMeasure.PositivePredictiveValue => (new Ratio(box.PositivesLow, positives), new Ratio(box.PositivesHigh, positives)),
            _ => (new Ratio(negatives.Minus(box.NegativesHigh), negatives), new Ratio(negatives.Minus(box.NegativesLow), negatives)),
        };
    }

    private static UndefinedReason Why(AccuracyMeasure measure) => measure switch
    {
        AccuracyMeasure.Sensitivity => UndefinedReason.NoCases,
        AccuracyMeasure.Specificity => UndefinedReason.NobodyWithoutTheCondition,
        _ => UndefinedReason.NoTrials,
    };
}
