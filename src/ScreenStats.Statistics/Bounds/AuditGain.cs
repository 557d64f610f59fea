namespace ScreenStats.Statistics.Bounds;

/// <summary>The bounds after some number of audited negatives.</summary>
/// <param name="Audited">Audited negatives with a conclusive result, those before included.</param>
/// <param name="Missed">How many of them are expected to be found missed; a real number.</param>
/// <param name="Sensitivity">Bounds of the sensitivity; null where there can be no case.</param>
/// <param name="Specificity">Bounds of the specificity; null where there can be nobody without the condition.</param>
/// <param name="Prevalence">Bounds of the prevalence; null without runs.</param>
/// <param name="PositivePredictiveValue">Bounds of the positive predictive value; null without positive runs.</param>
/// <param name="NegativePredictiveValue">Bounds of the negative predictive value; null without negative runs.</param>
public sealed record AuditGain(
    long Audited, double Missed, Interval? Sensitivity, Interval? Specificity, Interval? Prevalence, Interval? PositivePredictiveValue, Interval? NegativePredictiveValue);
