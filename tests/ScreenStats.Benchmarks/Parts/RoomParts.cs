using BenchmarkDotNet.Attributes;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Flow;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Worth;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>Rooms of the evaluation, each given what the rooms before it found.</summary>
[MemoryDiagnoser]
public class RoomParts
{
    private readonly Findings found = SampleProgram.Findings;

    [Benchmark(Baseline = true)]
    public Findings Whole() => Evaluator.Evaluate(SampleProgram.Tally, SampleProgram.Settings);

    [Benchmark]
    public object Accuracy() => AccuracyAnalysis.Of(SampleProgram.Tally, SampleProgram.Settings, found.Positivity, found.Kits, found.Expected);

    [Benchmark]
    public object Cadence() => CadenceAnalysis.Of(SampleProgram.Tally, SampleProgram.Settings, [], found.Accuracy);

    [Benchmark]
    public object Value() => WorthAnalysis.Of(SampleProgram.Tally, SampleProgram.Settings, found.Cadence, found.Yield, found.PredictiveValue);

    [Benchmark]
    public object Trend() => TrendAnalysis.Of(SampleProgram.Tally, SampleProgram.Settings, found.Lots);

    [Benchmark]
    public object Flow() => FlowAnalysis.Of(SampleProgram.Tally, found.Ledger, SampleProgram.Settings);
}
