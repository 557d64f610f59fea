using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Conduct;

internal static class ConductTables
{
    public static Table<ConductRow> Conduct(ImmutableArray<ConductRow> rows) => new(
        "conduct",
        "Conduct of runs",
        "Counted runs with an expired lot, read outside the device's reading window, beyond the number a kit holds, or on a person within the isolation " +
        "period after a confirmatory positive. They stay in every figure. Sites and lots are listed where something was found.",
        [
            new("finding", "Finding", Unit.Text, "What was found.", row => Cell.Text(row.Kind)),
            new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(row.Grouping))),
            new("level", "Level", Unit.Text, "The site or lot; empty for the whole program.", row => row.Level.Length == 0 ? Cell.Empty : Cell.Text(row.Level)),
            new("found", "Found", Unit.Count, "Runs with the finding.", row => row.Found is { } found ? Cell.Count(found) : Cell.Undefined(row.FoundUndefined ?? "")),
            new("runs", "Runs", Unit.Count, "All counted runs of the part.", row => Cell.Count(row.Runs)),
            new("share", "Share", Unit.Proportion, "Runs with the finding divided by all counted runs of the part.", row => Cell.NumberOr(row.Share, row.FoundUndefined ?? "nothing was counted")) { Method = Methods.MethodNames.Share },
        ],
        rows);

    public static Table<ConductRate> Rates(ImmutableArray<ConductRate> rows) => new(
        "conduct-rates",
        "Conduct as shares",
        "Each measure as a share of the runs of which it could be told: read outside the window of those with a reading time and a stated window, expired of those with a lot, " +
        "beyond kit contents of those with a kit whose contents are stated, repeats not done of those due on the same day, self-collected of those where that is recorded, unusable of an " +
        "operator's runs. Sites are compared with the others, lots and operators with the others of the same site. In order of names, not of shares: small numbers make the highest and the " +
        "lowest. Figures by operator are for training, not for discipline.",
        [
            new("measure", "Measure", Unit.Text, "What is counted.", row => Cell.Text(row.Measure)),
            LevelColumns.By<ConductRate>(row => row.Grouping),
            LevelColumns.Level<ConductRate>(row => row.Level),
            new("events", "Number", Unit.Count, "Runs with it.", row => Cell.Count(row.Share.Events)),
            new("trials", "Of", Unit.Count, "Runs of which it could be told.", row => Cell.Count(row.Share.Trials)),
            .. ShareColumns.For<ConductRate>(row => row.Share),
            .. LevelComparisons.Columns<ConductRate>(row => row.Comparison),
        ],
        rows);

    public static Table<ConductContrastRow> Contrasts(ImmutableArray<ConductContrastRow> rows) => new(
        "conduct-contrasts",
        "Differences between ways of taking the specimen",
        "Supervised minus self-collected, and one kind of specimen minus another: unusable runs, positivity and refuted positives per valid test. Plain with Newcombe's limits, and within the site-weeks " +
        "that used both, weighted by Mantel and Haenszel. Who collects is not drawn by lot: people and reasons for testing may differ too.",
        [
            new("by", "By", Unit.Text, "collection or specimen.", row => Cell.Text(LevelNames.Of(row.Contrast.Grouping))),
            new("first", "First", Unit.Text, "The first.", row => Cell.Text(row.Contrast.First)),
            new("second", "Second", Unit.Text, "The other.", row => Cell.Text(row.Contrast.Second)),
            new("measure", "Measure", Unit.Text, "Which trials and events.", row => Cell.Text(LevelNames.Of(row.Contrast.Measure))),
            new("adjustment", "Adjusted for", Unit.Text, "none: the plain difference; site-week: within site-weeks that used both.", row => Cell.Text(row.Adjustment)),
            .. DifferenceColumns.For<ConductContrastRow>(row => row.Difference),
        ],
        rows);

    public static IEnumerable<ConductContrastRow> Rows(ConductContrast contrast) =>
        [new(contrast, KitTables.NoAdjustment, contrast.Crude), new(contrast, KitTables.SiteWeek, contrast.Within)];
}
