namespace ScreenStats.Evaluation.Alarms;

/// <summary>A lot that is flagged or had an alarm: when it would have been known, and what happened before and after.</summary>
/// <param name="Lot">Name of the lot.</param>
/// <param name="Flagged">Whether the evaluation of the whole span flags it for its refuted positives.</param>
/// <param name="AlarmDay">The day at whose end the first alarm that names it would have come; null where none came.</param>
/// <param name="Rule">The rule of that alarm; empty where none came.</param>
/// <param name="RefutedBefore">Its positive runs reported refuted before that day.</param>
/// <param name="RefutedBy">The same by the end of that day.</param>
/// <param name="Refuted">The same by the end of the data.</param>
/// <param name="PositivesAfter">Its positive runs after that day: people sent home, or kept from work, counted as runs.</param>
/// <param name="RunsAfter">Its runs after that day.</param>
/// <param name="LastUse">Last day on which it was used.</param>
public sealed record LotAlarm(
    string Lot, bool Flagged, DateOnly? AlarmDay, string Rule, long? RefutedBefore, long? RefutedBy, long Refuted, long? PositivesAfter, long? RunsAfter, DateOnly LastUse);
