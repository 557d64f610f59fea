namespace ScreenStats.Statistics.Planning;

/// <summary>An excess of false positives in one lot, and how surely it shall be found.</summary>
public sealed record LotQuestion
{
    /// <summary>Refuted positives per valid test in the other lots, in [0, 1).</summary>
    public required double ExpectedRate { get; init; }

    /// <summary>How much higher the rate of the one lot is, above 0; the two add up to at most 1.</summary>
    public required double Excess { get; init; }

    /// <summary>How many lots are compared at once, 2 or more, this one among them.</summary>
    public required int Lots { get; init; }

    /// <summary>Valid tests of all other lots together, 1 or more; null where each has as many as this one.</summary>
    public long? OtherRuns { get; init; }

    /// <summary>The chance with which the lot shall be flagged, in (0, 1).</summary>
    public double Power { get; init; } = 0.8;

    /// <summary>The adjusted p-value below which a lot is flagged, in (0, 1).</summary>
    public double Threshold { get; init; } = 0.01;

    internal void Check()
    {
        if (!(ExpectedRate is >= 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(ExpectedRate), ExpectedRate, "The expected rate lies between 0 and 1, 1 excluded.");
        if (!(Excess > 0) || ExpectedRate + Excess > 1) throw new ArgumentOutOfRangeException(nameof(Excess), Excess, "The excess is above 0 and adds up with the expected rate to at most 1.");
        if (Lots < 2) throw new ArgumentOutOfRangeException(nameof(Lots), Lots, "At least 2 lots are compared.");
        if (OtherRuns is < 1 or > LotPower.LargestPopulation) throw new ArgumentOutOfRangeException(nameof(OtherRuns), OtherRuns, "The runs of the other lots must be at least 1 and at most ten million.");
        if (!(Power is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(Power), Power, "The power lies strictly between 0 and 1.");
        if (!(Threshold is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(Threshold), Threshold, "The threshold lies strictly between 0 and 1.");
    }
}
