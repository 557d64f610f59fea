namespace ScreenStats.Evaluation.Alarms;

/// <summary>The words for rules and statuses of alarms: lower case, joined by hyphens, the same in every culture.</summary>
public static class AlarmNames
{
    /// <summary>The name of a rule, as the program file acknowledges it.</summary>
    /// <param name="rule">The rule.</param>
    /// <returns>For instance <c>lot-evidence</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a rule.</exception>
    public static string Of(AlarmRule rule) => rule switch
    {
        AlarmRule.LotEvidence => "lot-evidence",
        AlarmRule.InvalidEvidence => "invalid-evidence",
        AlarmRule.InvalidRise => "invalid-rise",
        AlarmRule.ControlFailed => "control-failed",
        AlarmRule.ControlMissing => "control-missing",
        AlarmRule.ExpiredLot => "expired-lot",
        AlarmRule.KitOverrun => "kit-overrun",
        AlarmRule.LowYield => "low-yield",
        AlarmRule.RefutedRise => "refuted-rise",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule."),
    };

    /// <summary>The name of a status.</summary>
    /// <param name="status">The status.</param>
    /// <returns>For instance <c>out-of-use</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a status.</exception>
    public static string Of(AlarmStatus status) => status switch
    {
        AlarmStatus.New => "new",
        AlarmStatus.Standing => "standing",
        AlarmStatus.OutOfUse => "out-of-use",
        AlarmStatus.Acknowledged => "acknowledged",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, "Not a status."),
    };
}
