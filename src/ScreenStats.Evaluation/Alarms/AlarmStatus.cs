namespace ScreenStats.Evaluation.Alarms;

/// <summary>How an alarm stands on a day.</summary>
public enum AlarmStatus
{
    /// <summary>Raised on that day.</summary>
    New = 0,

    /// <summary>Raised before, and still there.</summary>
    Standing = 1,

    /// <summary>The lot or site was not used in the last 14 days.</summary>
    OutOfUse = 2,

    /// <summary>The program file says that it is known and dealt with.</summary>
    Acknowledged = 3,
}
