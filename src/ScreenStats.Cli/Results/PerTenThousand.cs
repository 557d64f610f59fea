namespace ScreenStats.Cli.Results;

/// <summary>What to expect among 10,000 people tested once.</summary>
internal sealed record PerTenThousand(Figure TruePositive, Figure FalseNegative, Figure FalsePositive, Figure TrueNegative);
