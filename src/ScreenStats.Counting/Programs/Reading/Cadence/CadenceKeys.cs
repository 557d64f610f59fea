using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Reading.Cadence;

/// <summary>Every key and word of the section on how often to screen. The shipped schema names the same ones (tested).</summary>
internal static class CadenceKeys
{
    public static ImmutableArray<string> Cadence { get; } =
    [
        "options", "planned", "plannedAt", "course", "delayDays", "confirmatoryDelayDays", "isolateOn", "repeatedMisses", "participation",
        "people", "days", "incidence", "reproduction", "broughtIn", "dispersion", "immunityDays", "falseAlarmDays", "worthwhile", "sensitivity", "specificity",
        "draws", "seed", "source",
    ];

    public static ImmutableArray<string> Range { get; } = ["value", "lower", "upper", "source"];

    public static ImmutableArray<string> Option { get; } = ["name", "everyDays", "weekdays"];

    public static ImmutableArray<string> SitePlan { get; } = ["sites", "option"];

    /// <summary>In the order of a week; see <see cref="OptionReader"/>.</summary>
    public static ImmutableArray<string> Weekdays { get; } = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

    public static ImmutableArray<string> Course { get; } =
        ["kind", "detectable", "infectious", "file", "detectionLimit", "infectiousness", "source", "symptoms"];

    /// <summary>In the order of <see cref="Programs.Cadence.CourseKind"/>.</summary>
    public static ImmutableArray<string> CourseKinds { get; } = ["windows", "by-day", "viral-load"];

    /// <summary>In the order of <see cref="Programs.Cadence.InfectiousnessKind"/>.</summary>
    public static ImmutableArray<string> Infectiousness { get; } = ["log-above-threshold", "proportional", "step"];

    public static ImmutableArray<string> Window { get; } = ["from", "to"];

    public static ImmutableArray<string> Symptoms { get; } = ["share", "onsetDays", "spread", "isolate"];

    /// <summary>In the order of <see cref="Programs.Cadence.IsolateOn"/>.</summary>
    public static ImmutableArray<string> IsolateOn { get; } = ["screen", "confirmation"];
}
