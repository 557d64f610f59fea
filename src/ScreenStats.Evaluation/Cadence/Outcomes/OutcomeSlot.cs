using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>One figure of one option.</summary>
/// <param name="Option">The option.</param>
/// <param name="Measure">What it is.</param>
/// <param name="Basis">What is taken of infections brought in.</param>
/// <param name="Undefined">Why it cannot be given; null where it can.</param>
internal sealed record OutcomeSlot(ScreeningOption Option, CadenceMeasure Measure, CadenceBasis Basis, string? Undefined);
