namespace ScreenStats.Statistics.Monitoring.Acceptance;

/// <summary>A double sampling plan: where the first sample leaves doubt a second one decides.</summary>
public readonly record struct DoubleSamplingPlan
{
    /// <summary>Makes a plan.</summary>
    /// <param name="firstSize">Items tested first, 1 or more.</param>
    /// <param name="firstAcceptance">Defective items of the first sample up to which the lot is accepted, 0 or more.</param>
    /// <param name="firstRejection">Defective items of the first sample from which it is rejected, above <paramref name="firstAcceptance"/>.</param>
    /// <param name="secondSize">Items tested after that where neither holds, 1 or more.</param>
    /// <param name="acceptance">Defective items of both samples up to which the lot is accepted, at least <paramref name="firstAcceptance"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Numbers that cannot be.</exception>
    public DoubleSamplingPlan(long firstSize, long firstAcceptance, long firstRejection, long secondSize, long acceptance)
    {
        if (firstSize < 1) throw new ArgumentOutOfRangeException(nameof(firstSize), firstSize, "The first sample must hold at least 1 item.");
        if (firstAcceptance < 0 || firstAcceptance > firstSize) throw new ArgumentOutOfRangeException(nameof(firstAcceptance), firstAcceptance, "The first acceptance number must lie between 0 and the size of the first sample.");
        if (firstRejection <= firstAcceptance) throw new ArgumentOutOfRangeException(nameof(firstRejection), firstRejection, "The first rejection number must lie above the first acceptance number.");
        if (secondSize < 1) throw new ArgumentOutOfRangeException(nameof(secondSize), secondSize, "The second sample must hold at least 1 item.");
        if (acceptance < firstAcceptance) throw new ArgumentOutOfRangeException(nameof(acceptance), acceptance, "The acceptance number of both samples must not lie below that of the first.");
        (FirstSize, FirstAcceptance, FirstRejection, SecondSize, Acceptance) = (firstSize, firstAcceptance, firstRejection, secondSize, acceptance);
    }

    /// <summary>Items tested first.</summary>
    public long FirstSize { get; }

    /// <summary>Defective items of the first sample up to which the lot is accepted.</summary>
    public long FirstAcceptance { get; }

    /// <summary>Defective items of the first sample from which the lot is rejected.</summary>
    public long FirstRejection { get; }

    /// <summary>Items tested after that where neither holds.</summary>
    public long SecondSize { get; }

    /// <summary>Defective items of both samples up to which the lot is accepted.</summary>
    public long Acceptance { get; }
}
