namespace ScreenStats.Cli.Results;

/// <summary>Prevalence and bias index of a table of two categories.</summary>
internal sealed record AgreementIndices(Figure Prevalence, Figure Bias);
