namespace ScreenStats.Evaluation.Kits;

/// <summary>One row of the table of contrasts: a contrast taken in one way.</summary>
/// <param name="Contrast">The contrast.</param>
/// <param name="Adjustment"><c>none</c>, or <c>site-week</c> where it is taken within them; each also <c>-without-flagged-lots</c>.</param>
/// <param name="Difference">The difference.</param>
public sealed record KitContrastRow(KitContrast Contrast, string Adjustment, DifferenceFinding Difference);
