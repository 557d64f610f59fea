namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>What a fit of serial tests assumes. Neither assumption can be tested by the table: look at all of them (<see cref="SerialTestFit.Bounds"/>).</summary>
public sealed record SerialTestOptions
{
    /// <summary>What is taken of people who leave; by default as estimated.</summary>
    public LeaverAssumption Leavers { get; init; } = LeaverAssumption.Estimated;

    /// <summary>What is taken of later tests; by default some recover in between.</summary>
    public EndAssumption Ends { get; init; } = EndAssumption.SomeRecover;

    /// <summary>Confidence of the limits, in (0, 1).</summary>
    public double Confidence { get; init; } = 0.95;

    internal void Check()
    {
        if (!Enum.IsDefined(Leavers)) throw new ArgumentOutOfRangeException(nameof(Leavers), Leavers, "Not an assumption this library knows.");
        if (!Enum.IsDefined(Ends)) throw new ArgumentOutOfRangeException(nameof(Ends), Ends, "Not an assumption this library knows.");
        Guard.Confidence(Confidence, nameof(Confidence));
    }
}
