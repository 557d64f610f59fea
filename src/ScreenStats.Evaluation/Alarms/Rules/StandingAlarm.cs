namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>An alarm that stands, before it is looked at whether the place is in use and whether somebody knows of it.</summary>
internal sealed record StandingAlarm(AlarmRule Rule, Place Place, DateOnly Since, string What, AlarmEvidence Evidence, string Next, string? Suspect = null);
