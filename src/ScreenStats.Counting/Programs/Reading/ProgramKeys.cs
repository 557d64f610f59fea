using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Every key and word that a program file may hold. The shipped schema names the same ones (tested).</summary>
internal static class ProgramKeys
{
    public static ImmutableArray<string> Program { get; } =
    [
        "$schema", "title", "timeZone", "startsOn", "dataAsOf", "exports", "warehouse", "screens", "confirmatoryTest", "prevalence", "policy", "audits", "alarms", "changes", "outbreaks", "community", "costs", "cadence", "report",
    ];

    public static ImmutableArray<string> Exports { get; } = ["screening", "confirmatory", "controls", "headcount", "sites"];

    public static ImmutableArray<string> Export { get; } = ["files", "sheets", "columns", "words", "dateOrder", "twoDigitYears"];

    public static ImmutableArray<string> Warehouse { get; } = ["url", "screening", "confirmatory", "timeoutSeconds"];

    public static ImmutableArray<string> Screen { get; } =
        ["name", "lots", "sensitivity", "specificity", "source", "readWindowMinutes", "runsPerKit"];

    public static ImmutableArray<string> ConfirmatoryTest { get; } = ["sensitivity", "specificity", "source"];

    public static ImmutableArray<string> Accuracy { get; } = ["value", "lower", "upper"];

    public static ImmutableArray<string> Prevalence { get; } = ["value", "lower", "upper", "source"];

    public static ImmutableArray<string> Policy { get; } =
    [
        "confirmWithinHours", "confirmBeforeHours", "auditWithinHours", "reportLagHours", "episodeDays", "isolationDays", "followUp",
        "controlsRequired",
    ];

    public static ImmutableArray<string> Audits { get; } = ["strata"];

    public static ImmutableArray<string> Stratum { get; } = ["name", "sites", "lots", "collection", "negatives"];

    public static ImmutableArray<string> Collections { get; } = ["supervised", "self"];

    public static ImmutableArray<string> Alarms { get; } = ["falseAlarmChance", "falseAlarmEveryDays", "invalidRateLimit", "baselineDays", "acknowledged"];

    public static ImmutableArray<string> Acknowledged { get; } = ["rule", "level", "until"];

    /// <summary>Names of the rules of alarms.</summary>
    public static ImmutableArray<string> AlarmRules { get; } =
        ["lot-evidence", "low-yield", "invalid-evidence", "invalid-rise", "control-failed", "control-missing", "expired-lot", "kit-overrun"];

    /// <summary>In the order of <see cref="ControlTrigger"/>.</summary>
    public static ImmutableArray<string> ControlTriggers { get; } = ["new-lot", "new-operator", "new-site", "daily"];

    public static ImmutableArray<string> Report { get; } = ["confidence", "period", "suppressBelow", "controlLimits", "compareBy"];

    public static ImmutableArray<string> DateOrders { get; } = ["iso", "day-first", "month-first"];

    public static ImmutableArray<string> Periods { get; } = ["day", "week", "month"];

    /// <summary>In the order of <see cref="Programs.ControlLimits"/>.</summary>
    public static ImmutableArray<string> ControlLimits { get; } = ["exact", "three-sigma"];

    /// <summary>In the order of <see cref="Programs.CompareBy"/>.</summary>
    public static ImmutableArray<string> CompareBy { get; } = ["site", "operator", "kit", "specimen", "region"];

    public static ImmutableArray<string> Change { get; } = ["on", "what", "sites"];

    public static ImmutableArray<string> Outbreak { get; } = ["site", "from", "to", "note"];

    public static ImmutableArray<string> Community { get; } = ["measure", "source", "until", "values"];

    /// <summary>In the order of <see cref="Programs.Surroundings.CommunityMeasure"/>.</summary>
    public static ImmutableArray<string> CommunityMeasures { get; } = ["positivity", "cases-per-100000-per-week"];

    public static ImmutableArray<string> CommunityValue { get; } = ["from", "value", "lower", "upper"];

    public static ImmutableArray<string> FollowUp { get; } = ["positive", "inconclusive"];

    public static ImmutableArray<string> ScreeningColumns { get; } =
    [
        "person", "site", "collected_at", "result", "control_line", "test_line", "lot", "kit", "lot_expiry", "read_at", "operator",
        "specimen", "collection", "symptomatic", "exposed", "outbreak", "control", "screen_id",
    ];

    public static ImmutableArray<string> ConfirmatoryColumns { get; } =
        ["person", "collected_at", "result", "reported_at", "method", "reason", "sampling_stratum"];

    public static ImmutableArray<string> ControlsColumns { get; } =
        ["site", "lot", "kit", "run_at", "control", "result", "control_line", "test_line", "operator"];

    public static ImmutableArray<string> HeadcountColumns { get; } = ["site", "week", "date", "eligible"];

    public static ImmutableArray<string> SitesColumns { get; } = ["site", "region"];

    public static ImmutableArray<string> ScreeningWords { get; } =
    [
        "positive", "negative", "inconclusive", "invalid", "yes", "no", "nasal", "nasopharyngeal", "throat", "saliva", "other",
        "supervised", "self",
    ];

    public static ImmutableArray<string> ConfirmatoryWords { get; } =
        ["positive", "negative", "indeterminate", "rejected", "follow-up", "audit", "other"];

    public static ImmutableArray<string> ControlsWords { get; } = ["positive", "negative", "inconclusive", "invalid", "yes", "no"];
}
