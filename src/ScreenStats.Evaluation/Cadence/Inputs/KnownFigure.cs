using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>A figure of the computation, and where it comes from.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="Figure">The figure; null where it is not known and nothing takes its place.</param>
/// <param name="Origin">Where it comes from.</param>
/// <param name="Source">In words.</param>
/// <param name="Method">The method that made it; null where it is not known.</param>
internal sealed record KnownFigure(Parameter Parameter, Uncertain? Figure, CadenceOrigin Origin, string Source, string? Method);
