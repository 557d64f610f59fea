namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>The rule that flags lots, seen as a sampling plan.</summary>
public sealed record FlagRule
{
    /// <summary>Events per trial in lots without a fault, in (0, 1).</summary>
    public required double Rate { get; init; }

    /// <summary>Trials of all other lots together, 1 or more.</summary>
    public required long OtherTrials { get; init; }

    /// <summary>How many lots are tested at once, 1 or more: the p-value is multiplied by it.</summary>
    public int Lots { get; init; } = 1;

    /// <summary>The adjusted one-sided p-value below which a lot is flagged, in (0, 1).</summary>
    public double Threshold { get; init; } = 0.01;

    internal void Check()
    {
        if (!(Rate is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(Rate), Rate, "The rate lies strictly between 0 and 1.");
        if (OtherTrials < 1) throw new ArgumentOutOfRangeException(nameof(OtherTrials), OtherTrials, "The other lots must have at least 1 trial.");
        if (Lots < 1) throw new ArgumentOutOfRangeException(nameof(Lots), Lots, "At least 1 lot is tested.");
        if (!(Threshold is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(Threshold), Threshold, "The threshold lies strictly between 0 and 1.");
    }
}
