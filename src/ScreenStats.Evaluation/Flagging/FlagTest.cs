namespace ScreenStats.Evaluation.Flagging;

/// <summary>How one lot or site did in one judgement: the counts that were judged, and what chance makes of them.</summary>
public sealed record FlagTest
{
    /// <summary>Its trials in the pool of the round that the p-value is of.</summary>
    public required long Trials { get; init; }

    /// <summary>Its events among them.</summary>
    public required long Events { get; init; }

    /// <summary>All trials in that pool.</summary>
    public required long PoolTrials { get; init; }

    /// <summary>All events in that pool.</summary>
    public required long PoolEvents { get; init; }

    /// <summary>Exact one-sided chance of at least its events; null where it was not tested.</summary>
    public required double? P { get; init; }

    /// <summary>The same adjusted for the number of lots or sites compared (Holm); null where it was not tested.</summary>
    public required double? PHolm { get; init; }

    /// <summary>
    /// The same chance where lots are compared within their sites, and where runs of one person are not taken as independent; null where it was
    /// not tested. A flag needs it times the number compared to be below the threshold too.
    /// </summary>
    public required double? PWidened { get; init; }

    /// <summary>By how much runs of the same people make its events vary more than independent runs would, at least 1; null where it was not tested.</summary>
    public required double? DesignEffect { get; init; }

    /// <summary>Why it was not tested; null where it was.</summary>
    public required string? PUndefined { get; init; }

    /// <summary>True where it is flagged.</summary>
    public required bool Flagged { get; init; }

    /// <summary>The round of the step-down that the p-value is of, from 1; 0 where it was not tested.</summary>
    public required int Round { get; init; }
}
