namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>A rule that is told one day after another and may use nothing of later days.</summary>
internal interface IAlarmRule
{
    /// <summary>Takes what became known on the next day.</summary>
    void Advance(DateOnly day, DayFacts facts);

    /// <summary>The alarms that stand at the end of the day told last, in the order of their levels.</summary>
    IEnumerable<StandingAlarm> Standing();
}
