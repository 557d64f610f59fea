using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Evaluation.ControlCharts;

/// <summary>What one rule found on a chart, and how often it fires where nothing is wrong.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Signals">Points at which it fired.</param>
/// <param name="RunLength">Points from one false alarm to the next, on average, by this rule alone; null where undefined.</param>
/// <param name="RunLengthUndefined">Why there is no such number; null where there is one.</param>
public sealed record RuleFinding(RunRule Rule, int Signals, double? RunLength, string? RunLengthUndefined);
