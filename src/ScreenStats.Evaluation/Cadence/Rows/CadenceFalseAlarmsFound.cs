namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>Refuted positives in the data, where flagged lots are left out of the specificity.</summary>
/// <param name="Refuted">All of them.</param>
/// <param name="OfFlaggedLots">Those of flagged lots.</param>
/// <param name="Days">Days of the data.</param>
public sealed record CadenceFalseAlarmsFound(long Refuted, long OfFlaggedLots, int Days);
