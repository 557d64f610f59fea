namespace ScreenStats.Statistics.Verification;

/// <summary>A screen of which only some positives and some negatives were verified by a confirmatory test.</summary>
public readonly record struct VerificationCounts
{
    /// <summary>Makes the counts.</summary>
    /// <param name="positives">All positive runs, verified or not.</param>
    /// <param name="confirmed">Positive runs the confirmatory test confirmed.</param>
    /// <param name="refuted">Positive runs the confirmatory test refuted.</param>
    /// <param name="negatives">All negative runs, verified or not.</param>
    /// <param name="missed">Audited negative runs the confirmatory test found positive.</param>
    /// <param name="agreed">Audited negative runs the confirmatory test found negative.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count below 0, or more verified than counted.</exception>
    public VerificationCounts(long positives, long confirmed, long refuted, long negatives, long missed, long agreed)
    {
        Guard.NotNegative(positives);
        Guard.NotNegative(confirmed);
        Guard.NotNegative(refuted);
        Guard.NotNegative(negatives);
        Guard.NotNegative(missed);
        Guard.NotNegative(agreed);
        if (confirmed > positives - refuted)
            throw new ArgumentOutOfRangeException(nameof(positives), positives, "The positives must be at least those verified.");
        if (missed > negatives - agreed)
            throw new ArgumentOutOfRangeException(nameof(negatives), negatives, "The negatives must be at least those audited.");
        Positives = positives;
        Confirmed = confirmed;
        Refuted = refuted;
        Negatives = negatives;
        Missed = missed;
        Agreed = agreed;
    }

    /// <summary>All positive runs, verified or not.</summary>
    public long Positives { get; }

    /// <summary>Positive runs the confirmatory test confirmed.</summary>
    public long Confirmed { get; }

    /// <summary>Positive runs the confirmatory test refuted.</summary>
    public long Refuted { get; }

    /// <summary>All negative runs, verified or not.</summary>
    public long Negatives { get; }

    /// <summary>Audited negative runs the confirmatory test found positive.</summary>
    public long Missed { get; }

    /// <summary>Audited negative runs the confirmatory test found negative.</summary>
    public long Agreed { get; }

    /// <summary>Positive runs with a conclusive confirmatory result.</summary>
    public long VerifiedPositives => Confirmed + Refuted;

    /// <summary>Negative runs with a conclusive audit result.</summary>
    public long VerifiedNegatives => Missed + Agreed;
}
