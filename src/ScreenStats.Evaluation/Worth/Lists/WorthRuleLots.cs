namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>What flagged lots make of the rule of frequency: a faulty lot turns out positives that call for more screens, with the faulty lot among them.</summary>
/// <param name="Periods">Periods that the rule was replayed over.</param>
/// <param name="MoreOften">Those in which people would have been screened more often than without the runs of flagged lots.</param>
/// <param name="LessOften">Those in which they would have been screened less often.</param>
/// <param name="Lots">How many lots are flagged for refuted positives.</param>
public sealed record WorthRuleLots(int Periods, int MoreOften, int LessOften, int Lots);
