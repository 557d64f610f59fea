using System.Text.Json.Serialization;

namespace ScreenStats.Evaluation.Alarms;

/// <summary>What an alarm stands on.</summary>
/// <param name="Text">The evidence in one line.</param>
/// <param name="Found">Events counted against the place: refuted or confirmed positives on the lot, unusable runs, failed controls, occasions without control, runs.</param>
/// <param name="Among">Among how many they were; null where there is no such number.</param>
/// <param name="Expected">How many were to be expected were nothing wrong; null where the rule expects none.</param>
/// <param name="Value">What the rule compares: the evidence, or the cumulative sum; null where it only counts.</param>
/// <param name="Threshold">From which value on the alarm is raised; null where the rule only counts.</param>
/// <param name="RisingSince">The day with which the rise began; null where the rule does not tell.</param>
public sealed record AlarmEvidence(
    string Text, long Found,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] long? Among = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Expected = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Value = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Threshold = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] DateOnly? RisingSince = null);
