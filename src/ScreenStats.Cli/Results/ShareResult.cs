namespace ScreenStats.Cli.Results;

/// <summary>The prevalence at which a stated share of the positives is real.</summary>
internal sealed record ShareResult(double Share, Figure Estimate, Figure Lower, Figure Upper);
