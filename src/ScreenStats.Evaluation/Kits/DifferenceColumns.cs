using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Kits;

/// <summary>The columns of a table of differences, first minus second.</summary>
internal static class DifferenceColumns
{
    public static ImmutableArray<Column<TRow>> For<TRow>(Func<TRow, DifferenceFinding> difference) =>
    [
        new("first_events", "First, number", Unit.Count, "Events of the first, as far as they are in this difference.", row => Cell.Count(difference(row).FirstEvents)),
        new("first_trials", "First, of", Unit.Count, "Trials of the first, likewise.", row => Cell.Count(difference(row).FirstTrials)),
        new("second_events", "Second, number", Unit.Count, "Events of the second, likewise.", row => Cell.Count(difference(row).SecondEvents)),
        new("second_trials", "Second, of", Unit.Count, "Trials of the second, likewise.", row => Cell.Count(difference(row).SecondTrials)),
        new("estimate", "Difference", Unit.Difference, "First minus second.", row => Cell.NumberOr(difference(row).Estimate, difference(row).EstimateUndefined ?? "")),
        new("lower", "Lower", Unit.Difference, "Lower limit as if all trials were independent.", row => Limit(difference(row), difference(row).Lower)),
        new("upper", "Upper", Unit.Difference, "Upper limit as if all trials were independent.", row => Limit(difference(row), difference(row).Upper)),
        new("method", "Method", Unit.Text, "Method of the difference and its limits.", row => Cell.Text(difference(row).Method)),
        new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => Cell.Number(difference(row).Confidence)),
        new("widened_lower", "Lower, widened", Unit.Difference, "Lower limit widened because trials come in clusters.", row => Limit(difference(row), difference(row).WidenedLower)),
        new("widened_upper", "Upper, widened", Unit.Difference, "Upper limit widened because trials come in clusters.", row => Limit(difference(row), difference(row).WidenedUpper)),
        new("strata", "Site-weeks", Unit.Count, "Site-weeks with trials of both, where the difference is taken within them.", row => difference(row).Strata is { } strata ? Cell.Count(strata) : Cell.Empty),
        new("remark", "Remark", Unit.Text, "Few counts (fewer than 5 events or other trials of either).", row => difference(row).FewCounts ? Cell.Text("few counts") : Cell.Empty),
    ];

    private static Cell Limit(DifferenceFinding difference, double? value) =>
        Cell.NumberOr(value, difference.EstimateUndefined ?? "without an event nothing is known of the difference's chance");
}
