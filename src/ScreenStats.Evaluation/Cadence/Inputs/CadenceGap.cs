namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>Days between a person's consecutive screens, and how often they were so many.</summary>
/// <param name="Days">Whole days, 1 or more: runs on the same day are one screen.</param>
/// <param name="Count">How often.</param>
public sealed record CadenceGap(int Days, long Count);
