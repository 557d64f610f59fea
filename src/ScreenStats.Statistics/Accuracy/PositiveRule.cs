namespace ScreenStats.Statistics.Accuracy;

/// <summary>When several results of one person count as positive together.</summary>
public enum PositiveRule
{
    /// <summary>Where each of them is positive.</summary>
    All,

    /// <summary>Where at least one of them is positive.</summary>
    Any,
}
