using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.WhatIf.Grids;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Evaluation.WhatIf;

/// <summary>The tables of what would be.</summary>
internal static class WhatIfTables
{
    private const string AsExact = "taken as exact";

    public static Table<WhatIfStart> Starts(ImmutableArray<WhatIfStart> rows) => new(
        "what-if-start",
        "Where the controls start",
        "The figures of the program and of its devices at which a what-if can start, with their limits: figures of the data where there are any, else those of the program file, else round values that are called so.",
        [
            new("name", "Whose", Unit.Text, "This program, or a device as stated.", row => Cell.Text(row.Name)),
            new("measure", "Control", Unit.Text, "prevalence, sensitivity, specificity or days-between-screens.", row => Cell.Text(row.Measure)),
            new("share", "Figure", Unit.Proportion, "The figure, where it is a share.", row => IsDays(row) ? Cell.Empty : Cell.Number(row.Value)),
            new("lower", "Lower limit", Unit.Proportion, "Its lower limit.", row => IsDays(row) ? Cell.Empty : Cell.NumberOr(row.Lower, AsExact)),
            new("upper", "Upper limit", Unit.Proportion, "Its upper limit.", row => IsDays(row) ? Cell.Empty : Cell.NumberOr(row.Upper, AsExact)),
            new("days", "Days", Unit.Days, "The figure, where it is days.", row => IsDays(row) ? Cell.Number(row.Value) : Cell.Empty),
            new("method", "Method", Unit.Text, "What made the figure and its limits.", row => Cell.Text(row.Method)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of the limits.", row => row.Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty),
            new("source", "Source", Unit.Text, "Where it comes from.", row => Cell.Text(row.Source)),
        ],
        rows);

    public static Table<ScreenedOutcome> Screened(ImmutableArray<ScreenedOutcome> rows) => new(
        "what-if-predictive-values",
        "What a positive would be worth",
        FormattableString.Invariant($"Of {PositiveGrids.People:N0} people screened once: how many would be positive, how many missed, and what a positive and a negative would be worth, at exactly these values. The first row is where the controls start."),
        [
            new("prevalence", "Prevalence", Unit.Proportion, "Share of infected people among those screened.", row => Cell.Number(row.Prevalence)) { Method = MethodNames.Grid },
            new("sensitivity", "Sensitivity", Unit.Proportion, "Of infected people, the share with a positive screen.", row => Cell.Number(row.Sensitivity)) { Method = MethodNames.Grid },
            new("specificity", "Specificity", Unit.Proportion, "Of people who are not infected, the share with a negative screen.", row => Cell.Number(row.Specificity)) { Method = MethodNames.Grid },
            new("true_positives", "Positive, infected", Unit.Ratio, "Infected people with a positive screen.", row => Cell.Number(row.TruePositives)) { Method = WhatIfNotes.Expected },
            new("false_positives", "Positive, not infected", Unit.Ratio, "People who are not infected with a positive screen.", row => Cell.Number(row.FalsePositives)) { Method = WhatIfNotes.Expected },
            new("missed", "Missed", Unit.Ratio, "Infected people with a negative screen.", row => Cell.Number(row.Missed)) { Method = WhatIfNotes.Expected },
            new("positive_predictive_value", "A positive is right", Unit.Proportion, "Of the positives, the share infected.", row => Cell.Number(row.PositivePredictiveValue)) { Method = PredictiveValue.ExactInputsMethod },
            new("negative_predictive_value", "A negative is right", Unit.Proportion, "Of the negatives, the share not infected.", row => Cell.Number(row.NegativePredictiveValue)) { Method = PredictiveValue.ExactInputsMethod },
        ],
        rows);

    public static Table<IntervalOutcome> Intervals(ImmutableArray<IntervalOutcome> rows) => new(
        "what-if-interval",
        "What an interval between screens would give",
        FormattableString.Invariant($"Screening every so many days at exactly these values: what is found and taken away of an infection, and what it asks of people within {IntervalGrids.LongestDays} days. The first row is where the controls start."),
        [
            new("days_between_screens", "Days between screens", Unit.Days, "Days from one screen of a person to the next.", row => Cell.Number(row.DaysBetweenScreens)) { Method = MethodNames.Grid },
            new("sensitivity", "Sensitivity", Unit.Proportion, "Of screens of an infected person while the infection can be detected, the share that are positive.", row => Cell.NumberOr(row.Sensitivity, row.SensitivityUndefined ?? "")) { Method = MethodNames.Grid },
            new("detection", "Found", Unit.Proportion, "Share of infections that a screen finds before symptoms isolate the person.", row => Cell.Number(row.Detection)) { Method = WhatIfNotes.Interval },
            new("removed", "Infectious time taken away", Unit.Proportion, "Share of the infectious time that falls after isolation, by a screen or by symptoms.", row => Cell.NumberOr(row.Removed, row.RemovedUndefined ?? "")) { Method = WhatIfNotes.Interval },
            new("caught", "Away before infectious", Unit.Proportion, "Share of infected people who are isolated before they pass anything on.", row => Cell.NumberOr(row.Caught, row.CaughtUndefined ?? "")) { Method = WhatIfNotes.Interval },
            new("screens", "Screens of a person", Unit.Ratio, FormattableString.Invariant($"Screens of one person within {IntervalGrids.LongestDays} days."), row => Cell.Number(row.Screens)) { Method = WhatIfNotes.Interval },
            new("specificity", "Specificity", Unit.Proportion, "Of screens of people who are not infected, the share that are negative.", row => Cell.Number(row.Specificity)) { Method = MethodNames.Grid },
            new("false_alarms", "False alarms", Unit.Ratio, FormattableString.Invariant($"False alarms among {IntervalGrids.People:N0} people within {IntervalGrids.LongestDays} days."), row => Cell.Number(row.FalseAlarms)) { Method = WhatIfNotes.Interval },
        ],
        rows);

    private static bool IsDays(WhatIfStart row) => row.Measure == IntervalGrids.Days;
}
