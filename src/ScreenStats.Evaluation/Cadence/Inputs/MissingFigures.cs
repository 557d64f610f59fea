using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>What stating one more figure would allow.</summary>
internal static class MissingFigures
{
    public static ImmutableArray<string> Of(KnownFigures known)
    {
        var missing = ImmutableArray.CreateBuilder<string>();
        var settings = known.Settings;
        if (settings.Course is not { } course) missing.Add("course (when an infection can be detected, and when it is passed on): what each option finds, and how many infectious days it removes");
        else if (course is { Kind: CourseKind.Windows, InfectiousFrom: null }) missing.Add("course, infectious: infectious days removed, and what each step adds");
        if (settings.Course is null or { Kind: CourseKind.Windows } && !known.Knows(Parameter.Sensitivity)) missing.Add("sensitivity, or audits of negative runs: what a screen finds");
        if (!known.Knows(Parameter.FalsePositiveRate)) missing.Add("specificity, or a confirmatory export: false alarms");
        if (settings.Course is not null && !known.Knows(Parameter.Incidence)) missing.Add("incidence, or a confirmatory export: infectious days, and the predictive value");
        if (settings.IsolateOn == IsolateOn.Confirmation && !known.Knows(Parameter.ConfirmatoryDelay)) missing.Add("confirmatoryDelayDays: what is removed where people are sent away on confirmation");
        if (!known.Knows(Parameter.BroughtIn) && !known.Knows(Parameter.Reproduction)) missing.Add("broughtIn, or reproduction: one figure in place of two bounds, infections averted and outbreaks avoided");
        if (settings.Planned is null && settings.PlannedAt.IsEmpty) missing.Add("planned: screens done of those due, and how many take part");
        if (settings.Worthwhile is null) missing.Add("worthwhile (infectious days that 1,000 more screens must remove): which option to choose");
        if (!known.Knows(Parameter.FalseAlarmDays)) missing.Add("falseAlarmDays: working days lost to false alarms");
        return missing.ToImmutable();
    }
}
