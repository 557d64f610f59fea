namespace ScreenStats.Statistics.Planning;

/// <summary>How many positives and negatives to verify, and how well the sensitivity is then known.</summary>
public sealed record AuditSample
{
    internal AuditSample(long verifiedPositives, long auditedNegatives, double expectedMissed, Interval interval)
    {
        VerifiedPositives = verifiedPositives;
        AuditedNegatives = auditedNegatives;
        ExpectedMissed = expectedMissed;
        Interval = interval;
    }

    /// <summary>Positives that get a confirmatory test, drawn at random.</summary>
    public long VerifiedPositives { get; }

    /// <summary>Negatives that get a confirmatory test, drawn at random.</summary>
    public long AuditedNegatives { get; }

    /// <summary>Confirmatory tests in all.</summary>
    public long ConfirmatoryTests => VerifiedPositives + AuditedNegatives;

    /// <summary>How many of the audited negatives are expected to be missed cases: with fewer than about five the interval is rough.</summary>
    public double ExpectedMissed { get; }

    /// <summary>The interval of the sensitivity at the expected counts.</summary>
    public Interval Interval { get; }

    /// <summary>The width achieved.</summary>
    public double Achieved => Interval.Width;
}
