namespace ScreenStats.Statistics.Verification;

/// <summary>Lower limits of sensitivity and specificity that hold together (see <see cref="OneSidedAccuracy"/>).</summary>
public sealed record OneSidedLimits
{
    internal OneSidedLimits(StratifiedCounts counts, double confidence, double sensitivity, double specificity)
    {
        Counts = counts;
        Confidence = confidence;
        Sensitivity = sensitivity;
        Specificity = specificity;
    }

    /// <summary>The counts they were computed from.</summary>
    public StratifiedCounts Counts { get; }

    /// <summary>The confidence that both hold, one-sided.</summary>
    public double Confidence { get; }

    /// <summary>The sensitivity is at least this; 0 where nothing was verified.</summary>
    public double Sensitivity { get; }

    /// <summary>The specificity is at least this; 0 where nothing was verified.</summary>
    public double Specificity { get; }
}
