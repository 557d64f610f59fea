using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>Parts run in the process that was built, so that a run does not build the whole house again for each of them.</summary>
internal static class PartConfig
{
    public static IConfig Instance { get; } = DefaultConfig.Instance
        .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance))
        .WithSummaryStyle(SummaryStyle.Default.WithMaxParameterColumnWidth(48));
}
