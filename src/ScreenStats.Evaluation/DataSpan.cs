using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation;

/// <summary>What time the data cover, and up to when they are complete.</summary>
public sealed record DataSpan
{
    /// <summary>First local day with a counted run; null where nothing was counted.</summary>
    public required DateOnly? FirstDay { get; init; }

    /// <summary>Last local day with a counted run; null where nothing was counted.</summary>
    public required DateOnly? LastDay { get; init; }

    /// <summary>The moment up to which the data are complete, local; null where nothing was counted.</summary>
    public required DateTime? DataAsOf { get; init; }

    /// <summary>Hours from collection to report that are allowed before a missing specimen counts as unverified.</summary>
    public required double ReportingLagHours { get; init; }

    /// <summary>True where the reporting lag is the data's own 95th percentile, false where it is the program file's.</summary>
    public required bool ReportingLagFromData { get; init; }

    /// <summary>Length of a reporting period.</summary>
    public required ReportPeriod Period { get; init; }

    /// <summary>True where a confirmatory export exists.</summary>
    public required bool HasConfirmatory { get; init; }
}
