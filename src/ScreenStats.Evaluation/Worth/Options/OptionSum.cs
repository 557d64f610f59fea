namespace ScreenStats.Evaluation.Worth.Options;

/// <summary>What one option costs and gains more than no screening; NaN where that is not known.</summary>
/// <param name="Spending">Screens, confirmatory tests, isolation and false alarms.</param>
/// <param name="Cost">The same, less illness and outbreaks saved.</param>
/// <param name="Effect">What it gains.</param>
internal readonly record struct OptionSum(double Spending, double Cost, double Effect);
