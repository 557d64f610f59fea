namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>The rate of one lot as a multiple of the others' in its strata, with limits, and whether the excess is material.</summary>
public sealed record LotRatioEstimate
{
    internal LotRatioEstimate(long observed, double expected, Estimate toOthers, Estimate toExpected, LotRatioOptions options)
    {
        Observed = observed;
        Expected = expected;
        ToOthers = toOthers;
        ToExpected = toExpected;
        Options = options;
    }

    /// <summary>Events of the lot in the informative strata.</summary>
    public long Observed { get; }

    /// <summary>Events expected of the lot in the informative strata if all lots were alike.</summary>
    public double Expected { get; }

    /// <summary>
    /// The ratio to the other lots of the same strata, taken as the same in each (of odds with whole trials, of rates with shares); without an
    /// upper bound, and so undefined but for its lower limit, where the others have no event.
    /// </summary>
    public Estimate ToOthers { get; }

    /// <summary>
    /// Observed over expected. What is expected holds the lot's own trials, so a lot with half of them cannot reach 2: this figure says how many
    /// events are too many, and <see cref="ToOthers"/> how much worse the lot is.
    /// </summary>
    public Estimate ToExpected { get; }

    /// <summary>Confidence, overdispersion and the material ratio.</summary>
    public LotRatioOptions Options { get; }

    /// <summary>Whether the lower limit of <see cref="ToOthers"/> reaches the material ratio.</summary>
    public bool Material => ToOthers.Lower >= Options.MaterialFrom;
}
