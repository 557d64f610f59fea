using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>One figure of one way of screening.</summary>
/// <param name="Key">Option, basis and measure, joined by vertical bars.</param>
/// <param name="Option">The way of screening.</param>
/// <param name="Measure">What it is.</param>
/// <param name="Basis">What is taken of infections brought in.</param>
/// <param name="Leads">Whether the basis is the one that is told first.</param>
/// <param name="Figure">At the central assumptions, with limits from the draws.</param>
public sealed record CadenceOutcome(string Key, string Option, CadenceMeasure Measure, CadenceBasis Basis, bool Leads, EstimateFinding Figure);
