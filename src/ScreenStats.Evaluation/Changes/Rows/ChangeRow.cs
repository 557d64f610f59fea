namespace ScreenStats.Evaluation.Changes.Rows;

/// <summary>One figure in two evaluations, and how it differs.</summary>
public sealed record ChangeRow
{
    /// <summary>What tells the row from the others: the measure, for a site or lot after its kind and name.</summary>
    public required string Key { get; init; }

    /// <summary>Of what part of the program.</summary>
    public required Grouping By { get; init; }

    /// <summary>The part; empty for the whole program.</summary>
    public required string Level { get; init; }

    /// <summary>What is compared.</summary>
    public required ChangeMeasure Measure { get; init; }

    /// <summary>Events in the earlier evaluation; null where it has none to compare.</summary>
    public required long? EarlierEvents { get; init; }

    /// <summary>Trials in the earlier evaluation; null where it has none to compare.</summary>
    public required long? EarlierTrials { get; init; }

    /// <summary>The figure of the earlier evaluation.</summary>
    public required double? EarlierEstimate { get; init; }

    /// <summary>Why the earlier evaluation has none; null where it has.</summary>
    public required string? EarlierEstimateUndefined { get; init; }

    /// <summary>Events in this evaluation; null where it has none to compare.</summary>
    public required long? LaterEvents { get; init; }

    /// <summary>Trials in this evaluation; null where it has none to compare.</summary>
    public required long? LaterTrials { get; init; }

    /// <summary>The figure of this evaluation.</summary>
    public required double? LaterEstimate { get; init; }

    /// <summary>Why this evaluation has none; null where it has.</summary>
    public required string? LaterEstimateUndefined { get; init; }

    /// <summary>What the difference compares.</summary>
    public required ChangeBasis Basis { get; init; }

    /// <summary>Events of what is compared from the earlier evaluation; null where no counts are compared.</summary>
    public required long? FromEvents { get; init; }

    /// <summary>Trials of what is compared from the earlier evaluation; null where no counts are compared.</summary>
    public required long? FromTrials { get; init; }

    /// <summary>Events of what is compared with it; null where no counts are compared.</summary>
    public required long? ToEvents { get; init; }

    /// <summary>Trials of what is compared with it; null where no counts are compared.</summary>
    public required long? ToTrials { get; init; }

    /// <summary>The difference of what is compared, later less earlier.</summary>
    public required double? Estimate { get; init; }

    /// <summary>Why there is no difference; null where there is one.</summary>
    public required string? EstimateUndefined { get; init; }

    /// <summary>Lower limit of the difference as if all trials were independent; for a figure that is no share of counts, from its own limits.</summary>
    public required double? Lower { get; init; }

    /// <summary>Why the difference has no limits; null where it has.</summary>
    public required string? LowerUndefined { get; init; }

    /// <summary>Upper limit of the difference.</summary>
    public required double? Upper { get; init; }

    /// <summary>Lower limit widened for clusters.</summary>
    public required double? WidenedLower { get; init; }

    /// <summary>Why there are no widened limits; null where there are.</summary>
    public required string? WidenedLowerUndefined { get; init; }

    /// <summary>Upper limit widened for clusters.</summary>
    public required double? WidenedUpper { get; init; }

    /// <summary>Method of the widened limits; null where there are none.</summary>
    public required string? WidenedMethod { get; init; }

    /// <summary>Method of the limits.</summary>
    public required string Method { get; init; }

    /// <summary>Confidence of all limits.</summary>
    public required double Confidence { get; init; }

    /// <summary>Fewer than 5 events or other trials stand on a side of what is compared; null where no counts are.</summary>
    public bool? FewCounts => FromTrials is null || ToTrials is null ? null : Few(FromEvents, FromTrials) || Few(ToEvents, ToTrials);

    /// <summary>Whether no difference at all lies outside of the widened limits; null where there are none.</summary>
    public bool? LeavesOutZero => WidenedLower is { } lower && WidenedUpper is { } upper ? lower > 0 || upper < 0 : null;

    private static bool Few(long? events, long? trials) => events is { } some && trials is { } all && Math.Min(some, all - some) < Clusters.ProportionFinding.FewBelow;
}
