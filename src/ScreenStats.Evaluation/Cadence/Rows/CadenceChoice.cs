namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>How sure it is that an option is the one to choose.</summary>
/// <param name="Key">Option and basis, joined by a vertical bar.</param>
/// <param name="Option">The option.</param>
/// <param name="Basis">What is taken of infections brought in.</param>
/// <param name="Leads">Whether that basis is the one that is told first.</param>
/// <param name="ShareOfDraws">The share of draws in which the rule chooses it.</param>
/// <param name="Chosen">Whether the rule chooses it at the central assumptions.</param>
public sealed record CadenceChoice(string Key, string Option, CadenceBasis Basis, bool Leads, double ShareOfDraws, bool Chosen);
