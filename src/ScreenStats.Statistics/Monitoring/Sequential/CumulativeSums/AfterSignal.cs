namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>What a cumulative sum does after a signal.</summary>
public enum AfterSignal
{
    /// <summary>It goes on, and signals as long as it stays at the limit: as on a chart of the past.</summary>
    Continue,

    /// <summary>It starts afresh from the head start: as when somebody acts on each signal.</summary>
    Restart,
}
