using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>A prevalence corrected for the errors of the test, or undefined with the reason.</summary>
public sealed record CorrectedPrevalence
{
    internal CorrectedPrevalence(ProportionEstimate apparent, double confidence)
    {
        Apparent = apparent;
        Confidence = confidence;
    }

    /// <summary>The apparent prevalence: positives of tests, with Wilson's interval.</summary>
    public ProportionEstimate Apparent { get; }

    /// <summary>The confidence of the intervals, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>The corrected prevalence clipped to [0, 1]; null where undefined.</summary>
    public double? Value => Unclipped is { } unclipped ? Math.Clamp(unclipped, 0, 1) : null;

    /// <summary>The corrected prevalence as computed, which can lie outside [0, 1]; null where undefined.</summary>
    public double? Unclipped { get; internal init; }

    /// <summary>The standard error of <see cref="Unclipped"/>; null where undefined.</summary>
    public double? StandardError { get; internal init; }

    /// <summary>Wald's interval around <see cref="Unclipped"/>, clipped to [0, 1]; null where undefined.</summary>
    public Interval? Interval => UnclippedInterval is { } interval ? interval.Clip(0, 1) : null;

    /// <summary>Wald's interval around <see cref="Unclipped"/>; null where undefined.</summary>
    public Interval? UnclippedInterval { get; internal init; }

    /// <summary>The lower end of <see cref="Interval"/>; null where undefined.</summary>
    public double? Lower => Interval?.Lower;

    /// <summary>The upper end of <see cref="Interval"/>; null where undefined.</summary>
    public double? Upper => Interval?.Upper;

    /// <summary>
    /// Fewer positives than the stated specificity alone would give: the corrected prevalence is 0, and the stated specificity is
    /// not compatible with these data, or only by chance.
    /// </summary>
    public bool ApparentBelowFalsePositiveRate => Unclipped < 0;

    /// <summary>More positives than the stated sensitivity can give: the corrected prevalence is 1.</summary>
    public bool ApparentAboveSensitivity => Unclipped > 1;

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; internal init; }

    /// <summary>Whether there is a value.</summary>
    public bool IsDefined => Unclipped is not null;

    /// <summary>The same as a plain estimate: clipped value and interval.</summary>
    /// <returns>The value with interval, or undefined with the reason.</returns>
    public Estimate ToEstimate() => Value is { } value && Interval is { } interval
        ? Estimate.Of(value, interval, RoganGladen.MethodName, Confidence)
        : Estimate.Undefined(Reason ?? UndefinedReason.NoTrials);
}
