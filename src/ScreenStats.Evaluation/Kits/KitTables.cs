using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Kits;

/// <summary>The tables of the devices side by side.</summary>
internal static class KitTables
{
    public const string NoAdjustment = "none";
    public const string SiteWeek = "site-week";
    public const string WithoutFlaggedLots = "-without-flagged-lots";

    public static Table<KitMeasureRow> Kits(ImmutableArray<KitMeasureRow> rows) => new(
        "kits",
        "Screening devices side by side",
        "Positivity, invalid runs, refuted positives per valid test and predictive value of each device of the program file. A device's limits are widened "
        + "by the largest design effect over its sites and site-weeks and over people; sums over people are kept for the whole program only, and theirs is used.",
        [
            new("device", "Device", Unit.Text, "Name of the device in the program file.", row => Cell.Text(row.Device)),
            new("measure", "Measure", Unit.Text, "Which trials and events.", row => Cell.Text(LevelNames.Of(row.Measure))),
            new("trials", "Of", Unit.Count, "Valid tests, runs, or positives that were confirmed or refuted.", row => Cell.Count(row.Share.Trials)),
            new("events", "Number", Unit.Count, "Positives, inconclusive and invalid runs, refuted or confirmed positives.", row => Cell.Count(row.Share.Events)),
            .. ShareColumns.For<KitMeasureRow>(row => row.Share),
        ],
        rows);

    public static Table<KitContrastRow> Contrasts(ImmutableArray<KitContrastRow> rows) => new(
        "kit-contrasts",
        "Differences between screening devices",
        "First minus second device. Plain: wherever and whenever they were used, with Newcombe's limits. Within site-weeks: only site-weeks that used both, weighted by "
        + "Mantel and Haenszel. Devices are not given to people at random: site and week may explain a plain difference, and what else differs may explain both.",
        [
            new("first", "First", Unit.Text, "The device that stands first in the program file.", row => Cell.Text(row.Contrast.First)),
            new("second", "Second", Unit.Text, "The other device.", row => Cell.Text(row.Contrast.Second)),
            new("measure", "Measure", Unit.Text, "Which trials and events.", row => Cell.Text(LevelNames.Of(row.Contrast.Measure))),
            new("adjustment", "Adjusted for", Unit.Text, "none: the plain difference; site-week: within site-weeks that used both; each also without the runs of flagged lots, where there are any.", row => Cell.Text(row.Adjustment)),
            new("first_events", "First, number", Unit.Count, "Events of the first device, as far as they are in this difference.", row => Cell.Count(row.Difference.FirstEvents)),
            new("first_trials", "First, of", Unit.Count, "Trials of the first device, likewise.", row => Cell.Count(row.Difference.FirstTrials)),
            new("second_events", "Second, number", Unit.Count, "Events of the second device, likewise.", row => Cell.Count(row.Difference.SecondEvents)),
            new("second_trials", "Second, of", Unit.Count, "Trials of the second device, likewise.", row => Cell.Count(row.Difference.SecondTrials)),
            new("estimate", "Difference", Unit.Difference, "First minus second.", row => Number(row, row.Difference.Estimate)),
            new("lower", "Lower", Unit.Difference, "Lower limit as if all trials were independent.", row => Limit(row, row.Difference.Lower)),
            new("upper", "Upper", Unit.Difference, "Upper limit as if all trials were independent.", row => Limit(row, row.Difference.Upper)),
            new("method", "Method", Unit.Text, "Method of the difference and its limits.", row => Cell.Text(row.Difference.Method)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => Cell.Number(row.Difference.Confidence)),
            new("widened_lower", "Lower, widened", Unit.Difference, "Lower limit widened because trials come in clusters.", row => Limit(row, row.Difference.WidenedLower)),
            new("widened_upper", "Upper, widened", Unit.Difference, "Upper limit widened because trials come in clusters.", row => Limit(row, row.Difference.WidenedUpper)),
            new("strata", "Site-weeks", Unit.Count, "Site-weeks with trials of both, where the difference is taken within them.", row => row.Difference.Strata is { } strata ? Cell.Count(strata) : Cell.Empty),
            new("remark", "Remark", Unit.Text, "Few counts (fewer than 5 events or other trials of either device).", row =>
                row.Difference.FewCounts ? Cell.Text("few counts") : Cell.Empty),
        ],
        rows);

    private static Cell Number(KitContrastRow row, double? value) => Cell.NumberOr(value, row.Difference.EstimateUndefined ?? "");

    private static Cell Limit(KitContrastRow row, double? value) =>
        Cell.NumberOr(value, row.Difference.EstimateUndefined ?? "without an event nothing is known of the difference's chance");
}
