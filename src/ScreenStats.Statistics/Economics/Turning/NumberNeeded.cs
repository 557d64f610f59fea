using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Economics.Turning;

/// <summary>How many must be screened for one case found, or one event averted.</summary>
/// <remarks>
/// Reciprocals: of the share of screens that find a case (limits: those of Wilson's interval, turned over), and of the difference in risk (limits: those of Newcombe's
/// interval, turned over, with no upper one where the difference may be nil). Source: Cook RJ, Sackett DL, BMJ 1995;310:452-454; Altman DG, BMJ 1998;317:1309-1312 (both from memory).
/// </remarks>
public static class NumberNeeded
{
    /// <summary>The name in tables where figures are taken as exact.</summary>
    public const string Method = "closed-form";

    /// <summary>The name in tables of the number for each case, from counts.</summary>
    public const string WilsonMethod = "wilson-turned-over";

    /// <summary>The name in tables of the number for each event averted.</summary>
    public const string NewcombeMethod = "newcombe-turned-over";

    /// <summary>Screens for each case found, from what is known of both.</summary>
    /// <param name="prevalence">The prevalence among those screened, in [0, 1].</param>
    /// <param name="sensitivity">The sensitivity, in [0, 1].</param>
    /// <returns>1/(p s), 1 or more; undefined where no case can be found.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate PerCase(double prevalence, double sensitivity)
    {
        Guard.Probability(prevalence);
        Guard.Probability(sensitivity);
        var number = 1 / (prevalence * sensitivity);
        return prevalence == 0 || sensitivity == 0 ? Estimate.Undefined(UndefinedReason.NoTruePositivePossible)
            : double.IsFinite(number) ? Estimate.Point(number, Method)
            : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    /// <summary>Screens for each case found, as counted.</summary>
    /// <param name="cases">Cases found, 0 to <paramref name="screens"/>.</param>
    /// <param name="screens">Screens, 0 or more.</param>
    /// <param name="confidence">The confidence, in (0, 1).</param>
    /// <returns>Screens over cases; with no case a lower limit only; undefined without screens.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    /// <remarks>The interval takes screens to be independent; people screened again and again, and outbreaks, make it too narrow.</remarks>
    public static Estimate PerCase(long cases, long screens, double confidence = 0.95)
    {
        var share = ProportionInterval.Wilson(cases, screens, confidence);
        if (share.Interval is not { } limits) return Estimate.Undefined(UndefinedReason.NoTrials);
        if (cases == 0) return Estimate.Unbounded(1 / limits.Upper, WilsonMethod, confidence, UndefinedReason.NoCases);
        var number = (double)screens / cases;
        return Estimate.Of(number, new Interval(1 / limits.Upper, 1 / limits.Lower).Including(number), WilsonMethod, confidence);
    }

    /// <summary>People to be screened for each event averted, from two risks taken as exact.</summary>
    /// <param name="riskWithout">The risk of an event without screening, in [0, 1].</param>
    /// <param name="riskWith">The risk with screening, in [0, 1].</param>
    /// <returns>1/(risk without - risk with); undefined where the risk is not lower with screening.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A risk outside [0, 1].</exception>
    public static Estimate PerEventAverted(double riskWithout, double riskWith)
    {
        Guard.Probability(riskWithout);
        Guard.Probability(riskWith);
        var averted = riskWithout - riskWith;
        var number = 1 / averted;
        return averted == 0 ? Estimate.Undefined(UndefinedReason.DoesNothing)
            : averted < 0 ? Estimate.Undefined(UndefinedReason.DoesHarm)
            : double.IsFinite(number) ? Estimate.Point(number, Method)
            : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    /// <summary>People to be screened for each event averted, from counts with and without screening.</summary>
    /// <param name="counts">First group: without screening; second group: with.</param>
    /// <param name="confidence">The confidence, in (0, 1).</param>
    /// <returns>
    /// 1/(difference in risk) with its interval where the difference is above 0 throughout. Where its interval holds 0 the number has a lower limit only: it is then undefined
    /// (the difference may be nil), and so where there is no difference or more events were seen with screening.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static Estimate PerEventAverted(TwoProportions counts, double confidence = 0.95)
    {
        var difference = ProportionDifference.Of(ContrastMethod.Newcombe, counts, confidence);
        if (difference.Value is not { } averted) return Estimate.Undefined(difference.Reason ?? UndefinedReason.NoTrials);
        if (averted < 0) return Estimate.Undefined(UndefinedReason.DoesHarm);
        if (difference.Interval is not { } limits || !(limits.Upper > 0)) return Estimate.Undefined(UndefinedReason.DoesNothing);
        if (averted == 0 || limits.Lower <= 0)
            return Estimate.Unbounded(1 / limits.Upper, NewcombeMethod, confidence, averted == 0 ? UndefinedReason.DoesNothing : UndefinedReason.MayDoNothing);
        return Estimate.Of(1 / averted, new Interval(1 / limits.Upper, 1 / limits.Lower).Including(1 / averted), NewcombeMethod, confidence);
    }
}
