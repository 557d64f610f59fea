namespace ScreenStats.Evaluation.Alarms;

/// <summary>An alarm as it stands on a day. It says that a place needs looking into, never that a positive was false or that anybody may return to work.</summary>
/// <param name="Rule">The rule that raised it.</param>
/// <param name="By">What the level is: <c>lot</c>, <c>site</c>, <c>site-and-lot</c> or <c>operator</c>.</param>
/// <param name="Level">Name of the lot, site or operator; site and lot are joined by a comma and a blank.</param>
/// <param name="Status">How it stands.</param>
/// <param name="Since">First day of the alarm, as it would have come had the rule run every day.</param>
/// <param name="What">The rule in words.</param>
/// <param name="Evidence">What it stands on.</param>
/// <param name="Next">What to do next.</param>
public sealed record Alarm(AlarmRule Rule, string By, string Level, AlarmStatus Status, DateOnly Since, string What, AlarmEvidence Evidence, string Next)
{
    /// <summary>For a site: the lot on which at least half of its events fell; null where there is none.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    internal string? Suspect { get; init; }

    /// <summary>True where somebody should act: the alarm is new or standing.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool NeedsAction => Status is AlarmStatus.New or AlarmStatus.Standing;
}
