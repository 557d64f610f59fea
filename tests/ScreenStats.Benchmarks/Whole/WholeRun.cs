namespace ScreenStats.Benchmarks.Whole;

/// <summary>One way to do the job, as a whole process, on exports of one size: the median of its rounds.</summary>
/// <param name="Rows">Rows of the screening export.</param>
/// <param name="Bytes">Its bytes.</param>
/// <param name="Way">What was run: one of <see cref="Ways"/>.</param>
/// <param name="Seconds">Seconds by the wall clock.</param>
/// <param name="PeakMegabytes">Peak of resident memory, in MiB.</param>
internal sealed record WholeRun(long Rows, long Bytes, string Way, double Seconds, double PeakMegabytes)
{
    /// <summary>The names of ways, in the order in which they take turns.</summary>
    public static IReadOnlyList<string> Ways { get; } = ["bytes", "split", "evaluate", "native", "native-bounded", "duckdb"];
}
