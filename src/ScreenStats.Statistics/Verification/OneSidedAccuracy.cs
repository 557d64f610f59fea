using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Verification;

/// <summary>Lower limits of sensitivity and specificity for audits too small, or too clean, for an estimate.</summary>
public static class OneSidedAccuracy
{
    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "one-sided-exact";

    /// <summary>Below so many audited negatives an estimate of sensitivity is not given: bounds and one-sided limits only.</summary>
    public const long LeastAudited = 30;

    /// <summary>Whether an audit allows bounds and one-sided limits only: fewer than 30 audited, or none missed.</summary>
    /// <param name="counts">The counts.</param>
    /// <returns>True where an estimate should not be given.</returns>
    public static bool BoundsOnly(VerificationCounts counts) => counts.VerifiedNegatives < LeastAudited || counts.Missed == 0;

    /// <summary>Lower limits of sensitivity and specificity that hold together.</summary>
    /// <param name="counts">The counts by stratum.</param>
    /// <param name="confidence">Confidence in (0, 1) that both limits hold at once; one-sided.</param>
    /// <returns>The two limits.</returns>
    /// <exception cref="ArgumentNullException">No counts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    /// <remarks>
    /// The exact lower limit of the confirmed share a and the exact upper limit of the missed share of each of the H strata, each at confidence
    /// 1 - (1 - confidence)/(H + 1), are put into Se = a n1/(a n1 + Σ N_h b_h) and Sp = Σ N_h (1 - b_h)/((1 - a) n1 + Σ N_h (1 - b_h)). By Bonferroni's
    /// inequality all of them hold with at least the confidence, and with them both results, given how many runs were positive and negative.
    /// A stratum without audit counts as all missed. Conservative. Runs are taken as independent. The limits of the shares: Clopper CJ, Pearson ES, Biometrika
    /// 1934;26:404-413.
    /// </remarks>
    public static OneSidedLimits Lower(StratifiedCounts counts, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(counts);
        Guard.Confidence(confidence);
        var each = 1 - ((1 - confidence) / (counts.Strata.Length + 1));
        var overall = counts.Overall;
        var confirmed = LowerLimit(overall.Confirmed, overall.VerifiedPositives, each) * overall.Positives;
        double missed = 0;
        double agreed = 0;
        foreach (var stratum in counts.Strata)
        {
            // What is not missed has a lower limit of its own: 1 minus a share near 1 would lose its digits.
            var free = LowerLimit(stratum.Agreed, stratum.Audited, each);
            agreed += stratum.Negatives * free;
            missed += stratum.Negatives * UpperLimit(stratum.Missed, stratum.Audited, each);
        }

        var refuted = overall.Positives * UpperLimit(overall.Refuted, overall.VerifiedPositives, each);
        return new OneSidedLimits(
            counts, confidence,
            confirmed + missed > 0 ? confirmed / (confirmed + missed) : 0,
            refuted + agreed > 0 ? agreed / (refuted + agreed) : 0);
    }

    private static double LowerLimit(long events, long trials, double confidence) =>
        trials == 0 ? 0 : ExactInterval.ClopperPearson(events, trials, tail: 1 - confidence).Lower;

    private static double UpperLimit(long events, long trials, double confidence) =>
        trials == 0 ? 1 : ExactInterval.ClopperPearson(events, trials, tail: 1 - confidence).Upper;
}
