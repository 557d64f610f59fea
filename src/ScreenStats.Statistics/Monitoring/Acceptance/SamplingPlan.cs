namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>A single sampling plan: a sample of a lot is tested, and the lot accepted where at most so many are defective.</summary>
public readonly record struct SamplingPlan
{
    /// <summary>Makes a plan.</summary>
    /// <param name="size">Items tested, 1 or more.</param>
    /// <param name="acceptanceNumber">Defective items up to which the lot is accepted, 0 to <paramref name="size"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Numbers that cannot be.</exception>
    public SamplingPlan(long size, long acceptanceNumber)
    {
        if (size < 1) throw new ArgumentOutOfRangeException(nameof(size), size, "The sample must hold at least 1 item.");
        if (acceptanceNumber < 0 || acceptanceNumber > size) throw new ArgumentOutOfRangeException(nameof(acceptanceNumber), acceptanceNumber, "The acceptance number must lie between 0 and the size of the sample.");
        Size = size;
        AcceptanceNumber = acceptanceNumber;
    }

    /// <summary>Items tested.</summary>
    public long Size { get; }

    /// <summary>Defective items up to which the lot is accepted.</summary>
    public long AcceptanceNumber { get; }
}
