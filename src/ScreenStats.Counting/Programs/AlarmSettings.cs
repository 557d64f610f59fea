using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs;

/// <summary>How often an alarm may be false, and which alarms are dealt with already.</summary>
public sealed record AlarmSettings
{
    /// <summary>
    /// Chance, strictly between 0 and 1, that a rule that may be looked at every day ever raises an alarm on a program without fault, over all lots or sites together.
    /// Default 0.01.
    /// </summary>
    public double FalseAlarmChance { get; init; } = 0.01;

    /// <summary>Days, at least 1, in which one false alarm of a cumulative sum is accepted, over all sites or lots together. Default 365.</summary>
    public int FalseAlarmEveryDays { get; init; } = 365;

    /// <summary>Invalid-run rate, strictly between 0 and 1, that no lot or site is to exceed. Default 0.05.</summary>
    public double InvalidRateLimit { get; init; } = 0.05;

    /// <summary>Days at the start of the data, at least 1, from which the program's ordinary rates are taken. Default 28.</summary>
    public int BaselineDays { get; init; } = 28;

    /// <summary>Alarms that are known and dealt with.</summary>
    public ImmutableArray<AcknowledgedAlarm> Acknowledged { get; init; } = [];
}
