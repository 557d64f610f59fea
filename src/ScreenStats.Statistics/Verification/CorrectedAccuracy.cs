namespace ScreenStats.Statistics.Verification;

/// <summary>A sensitivity or specificity corrected for partial verification, or undefined with the reason.</summary>
public sealed record CorrectedAccuracy
{
    internal CorrectedAccuracy(VerificationCounts counts, Estimate estimate, double? standardError, double? logitVariance)
    {
        Counts = counts;
        Estimate = estimate;
        StandardError = standardError;
        LogitVariance = logitVariance;
    }

    /// <summary>The counts it was computed from.</summary>
    public VerificationCounts Counts { get; }

    /// <summary>The corrected value with its interval (see <see cref="BeggGreenes"/>), or undefined.</summary>
    public Estimate Estimate { get; }

    /// <summary>The delta-method standard error of the value; null where undefined or where the value is 0 or 1.</summary>
    public double? StandardError { get; }

    /// <summary>The delta-method variance of the value's logit; null where undefined or where the value is 0 or 1.</summary>
    public double? LogitVariance { get; }
}
