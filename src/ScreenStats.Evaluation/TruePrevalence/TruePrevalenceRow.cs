namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>A row of the table of true prevalence: one part by one method.</summary>
/// <param name="Part">The part.</param>
/// <param name="Value">The estimate.</param>
public sealed record TruePrevalenceRow(TruePrevalenceFinding Part, PrevalenceEstimate Value);
