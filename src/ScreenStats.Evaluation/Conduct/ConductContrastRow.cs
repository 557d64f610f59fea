using ScreenStats.Evaluation.Kits;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>One difference of a contrast.</summary>
/// <param name="Contrast">The contrast.</param>
/// <param name="Adjustment">What it is adjusted for.</param>
/// <param name="Difference">The difference.</param>
public sealed record ConductContrastRow(ConductContrast Contrast, string Adjustment, DifferenceFinding Difference);
