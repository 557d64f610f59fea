namespace ScreenStats.Evaluation.Model;

/// <summary>A figure that a sentence speaks of.</summary>
/// <param name="Id">Its path in findings.json, such as <c>positivity.program.estimate</c>.</param>
/// <param name="Value">The value.</param>
/// <param name="Unit">Its unit: decides how it is printed.</param>
public sealed record FigureReference(string Id, Cell Value, Unit Unit);
