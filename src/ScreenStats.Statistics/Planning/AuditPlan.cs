namespace ScreenStats.Statistics.Planning;

/// <summary>How many results to verify so that the sensitivity is known to a given width.</summary>
public sealed record AuditPlan
{
    internal AuditPlan(AuditQuestion question, long positives, long negatives, AuditSample? allPositives, AuditSample? fewest, double? widthWhenAllAreVerified)
    {
        Question = question;
        ExpectedPositives = positives;
        ExpectedNegatives = negatives;
        AllPositives = allPositives;
        Fewest = fewest;
        WidthWhenAllAreVerified = widthWhenAllAreVerified;
    }

    /// <summary>What was asked.</summary>
    public AuditQuestion Question { get; }

    /// <summary>Expected positive screens, rounded.</summary>
    public long ExpectedPositives { get; }

    /// <summary>Expected negative screens: the others.</summary>
    public long ExpectedNegatives { get; }

    /// <summary>Every positive is verified, as programs do, and the fewest negatives that are then enough; null where none are.</summary>
    public AuditSample? AllPositives { get; }

    /// <summary>The fewest confirmatory tests in all, positives and negatives together; null where none are enough.</summary>
    public AuditSample? Fewest { get; }

    /// <summary>The width if every screen were verified; null where an expected count is zero.</summary>
    public double? WidthWhenAllAreVerified { get; }

    /// <summary>Why there is no answer; null where there is one.</summary>
    public UndefinedReason? Reason => Fewest is null ? UndefinedReason.TooFewScreens : null;
}
