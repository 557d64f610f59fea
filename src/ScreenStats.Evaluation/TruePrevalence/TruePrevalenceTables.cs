using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>The table of true prevalence.</summary>
internal static class TruePrevalenceTables
{
    public static Table<TruePrevalenceRow> Table(IEnumerable<TruePrevalenceFinding> parts) => new(
        "true-prevalence",
        "Prevalence behind the positivity",
        "The share of valid tests done on infected people, by the stated accuracy of the devices: each part and period by each method. Where several devices "
        + "were used, their sensitivities and specificities are weighted by their valid tests in that part and period. It rests on the stated accuracy and cannot judge it.",
        [
            new("by", "By", Unit.Text, "How the program is divided.", row => Cell.Text(row.Part.By)),
            LevelColumns.Level<TruePrevalenceRow>(row => row.Part.Level),
            new("period_start", "Period from", Unit.Date, "First day of the period; empty for the whole span. Weeks start on Monday.", row => Cell.Date(row.Part.PeriodStart)),
            new("tests", "Valid tests", Unit.Count, "Valid tests of devices whose accuracy is stated.", row => Cell.Count(row.Part.Apparent.Trials)),
            new("positives", "Positive", Unit.Count, "Positive ones.", row => Cell.Count(row.Part.Apparent.Events)),
            new("apparent", "Positivity", Unit.Proportion, "Positive among valid tests.", row => Cell.NumberOr(row.Part.Apparent.Estimate, row.Part.Apparent.EstimateUndefined ?? "")) { Method = Methods.MethodNames.Share },
            new("method", "Method", Unit.Text, "Method of the correction and of all its limits.", row => Cell.Text(row.Value.Method)),
            new("estimate", "True prevalence", Unit.Proportion, "Share of these tests done on infected people.", row => Number(row, row.Value.Estimate)),
            new("lower", "Lower", Unit.Proportion, "Lower limit as if all tests were independent.", row => Number(row, row.Value.Lower)),
            new("upper", "Upper", Unit.Proportion, "Upper limit as if all tests were independent.", row => Number(row, row.Value.Upper)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => Cell.Number(row.Value.Confidence)),
            new("remark", "Remark", Unit.Text, "Whether the estimate was held at 0 or 1 or lies below what was confirmed, few counts, whether tests were left out of the whole program, and why limits could not be widened.", row => Words(row.Part.Remark)),
            new("widened_lower", "Lower, widened", Unit.Proportion, "Lower limit widened because tests come in clusters.", row => Number(row, row.Value.WidenedLower)),
            new("widened_upper", "Upper, widened", Unit.Proportion, "Upper limit widened because tests come in clusters.", row => Number(row, row.Value.WidenedUpper)),
            new("design_effect", "Design effect", Unit.Ratio, "How many times the clusters raise the variance of the positivity; at least 1.", row => Cell.Number(row.Part.Apparent.DesignEffect)) { Method = Methods.MethodNames.DesignEffect },
            new("unclipped", "Not held within 0 and 1", Unit.Proportion, "The estimate as computed; below 0 where fewer tests were positive than 1 - specificity alone would give.", row => row.Value.Unclipped is { } value ? Cell.Number(value) : Cell.Empty),
            new("sensitivity", "Sensitivity used", Unit.Proportion, "Stated sensitivity, weighted by valid tests where several devices were used.", row => Cell.NumberOr(row.Part.Sensitivity, row.Value.EstimateUndefined ?? "")) { Method = Methods.MethodNames.WeightedAccuracy },
            new("specificity", "Specificity used", Unit.Proportion, "Stated specificity, weighted likewise.", row => Cell.NumberOr(row.Part.Specificity, row.Value.EstimateUndefined ?? "")) { Method = Methods.MethodNames.WeightedAccuracy },
            new("devices", "Devices", Unit.Text, "Devices whose tests are in it.", row => Words(string.Join("; ", row.Part.Devices))),
            new("tests_without_accuracy", "Tests left out", Unit.Count, "Valid tests of devices whose sensitivity or specificity is not stated.", row => Cell.Count(row.Part.TestsWithoutAccuracy)),
        ],
        [.. parts.SelectMany(part => part.Estimates.Select(value => new TruePrevalenceRow(part, value)))]);

    private static Cell Number(TruePrevalenceRow row, double? value) => Cell.NumberOr(value, row.Value.EstimateUndefined ?? "");

    private static Cell Words(string text) => text.Length == 0 ? Cell.Empty : Cell.Text(text);
}
