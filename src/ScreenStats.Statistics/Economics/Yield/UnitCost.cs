namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>A cost for each of something, with bounds.</summary>
public sealed record UnitCost
{
    internal UnitCost(double? value, double? lower, double? upper, UndefinedReason? reason, UndefinedReason? upperReason)
    {
        Value = value;
        Lower = lower;
        Upper = upper;
        Reason = reason;
        UpperReason = upperReason;
    }

    /// <summary>The cost for each; null where it has none.</summary>
    public double? Value { get; }

    /// <summary>No cost for each can be lower: all costs at their lower ends, as many as at most. Null where nothing can be said.</summary>
    public double? Lower { get; }

    /// <summary>No cost for each can be higher; null where it has no bound.</summary>
    public double? Upper { get; }

    /// <summary>Why there is no value; null where there is one.</summary>
    public UndefinedReason? Reason { get; }

    /// <summary>Why there is no upper bound; null where there is one.</summary>
    public UndefinedReason? UpperReason { get; }

    /// <summary>Whether there is a value.</summary>
    public bool IsDefined => Value is not null;
}
