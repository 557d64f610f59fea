namespace ScreenStats.Cli.Results;

/// <summary>The beta distribution that stands for a value written with an interval.</summary>
internal sealed record MatchedResult(string Of, double Alpha, double Beta);
