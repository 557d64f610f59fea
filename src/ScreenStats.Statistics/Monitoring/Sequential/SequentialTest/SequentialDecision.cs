namespace ScreenStats.Statistics.Monitoring.Sequential.SequentialTest;

/// <summary>What a sequential test says after some observations.</summary>
public enum SequentialDecision
{
    /// <summary>Neither rate is ruled out: observe more.</summary>
    Continue,

    /// <summary>The lot is taken to hold its claimed rate.</summary>
    Accept,

    /// <summary>The lot is taken not to hold it.</summary>
    Reject,
}
