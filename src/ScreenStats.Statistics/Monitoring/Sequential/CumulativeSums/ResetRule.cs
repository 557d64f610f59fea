namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>
/// Where the floor of 0 is applied. With a limit above 0 both signal at the same observations and have the same average run lengths; they differ
/// in what is drawn while nothing happens.
/// </summary>
public enum ResetRule
{
    /// <summary>max(0, S + W): the statistic is never below 0 (Page; Steiner).</summary>
    AfterAdding,

    /// <summary>max(0, S) + W: the statistic shows how far the last observation took it below 0 (Reynolds and Stoumbos).</summary>
    BeforeAdding,
}
