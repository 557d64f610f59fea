namespace ScreenStats.Statistics.Economics.Decision;

/// <summary>Whom to treat as infected.</summary>
public enum DecisionPolicy
{
    /// <summary>No one.</summary>
    TreatNone,

    /// <summary>Those whose screen is positive.</summary>
    Screen,

    /// <summary>Everyone.</summary>
    TreatAll,
}
