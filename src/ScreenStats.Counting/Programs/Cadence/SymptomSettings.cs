namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>When symptoms begin, and whether a person with symptoms stays away of their own accord.</summary>
public sealed record SymptomSettings
{
    /// <summary>Share of infected people who get symptoms, in [0, 1].</summary>
    public required StatedRange Share { get; init; }

    /// <summary>Days from infection to symptoms, the median; positive.</summary>
    public required StatedRange OnsetDays { get; init; }

    /// <summary>Standard deviation of the logarithm of those days, from 0 (the same day for everybody) to 2; null where not stated: 0.</summary>
    public StatedRange? Spread { get; init; }

    /// <summary>Share of people with symptoms who stay away once they begin, in [0, 1]; null where not stated: 1.</summary>
    public StatedRange? Isolate { get; init; }
}
