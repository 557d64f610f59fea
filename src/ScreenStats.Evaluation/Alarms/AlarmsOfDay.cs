using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Alarms;

/// <summary>The alarms at the end of a day, from what was reported by then and nothing later.</summary>
/// <param name="AsOf">The day.</param>
/// <param name="FalseAlarmChance">The chance of any false alarm, ever, of each rule that may be looked at every day (of the proof of a rate above the limit: over sites, and over lots), where runs are independent.</param>
/// <param name="FalseAlarmEveryDays">Days in which one false alarm of the cumulative sums is accepted.</param>
/// <param name="InvalidRateLimit">The invalid-run rate that no site or lot is to exceed.</param>
/// <param name="BaselineDays">Days from which the program's ordinary rate is taken.</param>
/// <param name="BaselineRate">That rate; null until the days are over.</param>
/// <param name="Alarms">The alarms: those that need action first, the latest first.</param>
/// <param name="Notes">What could not be judged, and why.</param>
public sealed record AlarmsOfDay(
    DateOnly AsOf, double FalseAlarmChance, int FalseAlarmEveryDays, double InvalidRateLimit, int BaselineDays, double? BaselineRate,
    ImmutableArray<Alarm> Alarms, ImmutableArray<string> Notes);
