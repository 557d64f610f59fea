namespace ScreenStats.Evaluation.Alarms;

/// <summary>An alarm that would have been raised had the rules run every day, from its first to its last day.</summary>
/// <param name="Key">Rule, what the level is, level and first day, joined by vertical bars.</param>
/// <param name="Rule">Name of the rule.</param>
/// <param name="By"><c>lot</c>, <c>site</c>, <c>site-and-lot</c> or <c>operator</c>.</param>
/// <param name="Level">Name of the lot, site or operator; for training, not for discipline.</param>
/// <param name="Since">First day.</param>
/// <param name="Until">Last day; null where it still stands.</param>
/// <param name="Days">Days on which it stood.</param>
/// <param name="Status">How it stands at the end of the data, or <c>ended</c>.</param>
/// <param name="Evidence">What was to be read on the first day.</param>
/// <param name="Found">Events counted against the place by then.</param>
/// <param name="Among">Among how many they were; null where there is no such number.</param>
/// <param name="Expected">How many were to be expected; null where the rule expects none.</param>
/// <param name="Statistic">The cumulative sum, or the evidence as a power of ten; null where the rule only counts.</param>
/// <param name="StatisticThreshold">From where on the alarm is raised, on the same scale.</param>
/// <param name="Next">What to do next.</param>
public sealed record RaisedAlarm(
    string Key, string Rule, string By, string Level, DateOnly Since, DateOnly? Until, int Days, string Status, string Evidence, long Found, long? Among, double? Expected,
    double? Statistic, double? StatisticThreshold, string Next);
