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
            .. DifferenceColumns.For<KitContrastRow>(row => row.Difference),
        ],
        rows);
}
