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

    /// <summary>The name of the method in tables.</summary>
    public string Method { get; internal init; } = RoganGladen.MethodName;

    /// <summary>The corrected prevalence clipped to [0, 1]; null where undefined.</summary>
    public double? Value => Unclipped is { } unclipped ? Math.Clamp(unclipped, 0, 1) : null;

    /// <summary>The corrected prevalence as computed, which can lie outside [0, 1]; null where undefined.</summary>
    public double? Unclipped { get; internal init; }

    /// <summary>The standard error the interval was made of; null where undefined, and where the method has none.</summary>
    public double? StandardError { get; internal init; }

    /// <summary>The centre before the shift, of a method that adds to the counts first; null elsewhere.</summary>
    public double? AdjustedCentre { get; internal init; }

    /// <summary>By how much the interval's centre is shifted from <see cref="AdjustedCentre"/>; null where there is none.</summary>
    public double? Shift { get; internal init; }

    /// <summary>The interval clipped to [0, 1] and around <see cref="Value"/>; null where undefined.</summary>
    public Interval? Interval => UnclippedInterval is { } interval && Value is { } value ? interval.Clip(0, 1).Including(value) : null;

    /// <summary>The interval as computed, which can leave [0, 1]; null where undefined.</summary>
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
        ? Estimate.Of(value, interval, Method, Confidence)
        : Estimate.Undefined(Reason ?? UndefinedReason.NoTrials);
}
