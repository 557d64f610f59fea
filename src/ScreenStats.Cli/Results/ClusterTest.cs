namespace ScreenStats.Cli.Results;

/// <summary>One test of two groups of clusters.</summary>
internal sealed record ClusterTest(string Method, Figure ChiSquare, Figure PValue);
