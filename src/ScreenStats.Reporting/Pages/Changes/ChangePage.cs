using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Rows;

namespace ScreenStats.Reporting.Pages.Changes;

/// <summary>What has changed since an earlier evaluation.</summary>
internal static class ChangePage
{
    /// <summary>The page.</summary>
    public static Page Of(ChangeFindings changes) => new(
        "changes", "Figures and flags before and now", changes,
        "Why something changed. Who was tested, with which kits, how well positives were followed up and how much infection there was outside may all differ between the two. "
        + "Of many figures some differ by chance alone: about one in twenty lies outside of its own limits where nothing has changed.",
        "Figures of the earlier evaluation are read from its findings.json. Where the two share no day they are compared as they are; where this one holds the earlier one, the earlier counts are taken from the later ones, and "
        + "what is left, which shares no run with the earlier one, is compared with it; where a count fell, so that what is left is not known, the periods that begin after the earlier last day take its place; where the "
        + "spans overlap, the periods that only one of them has are compared. The same sites stand on both sides, so where both count by site the limits come from how unlike one another the sites changed; elsewhere they are "
        + "Newcombe's hybrid of Wilson's limits, each widened by a design effect scaled to what is compared, as if other sites stood on each side: these are too wide, so a difference is not told from chance rather than made by it. "
        + "Confirmed and refuted positives and follow-up are compared by whole periods that begin after the earlier last day where positives were open then, for late results are not of new runs.")
    {
        Caution = "A difference does not say why. A flag that is closed is no proof that a lot or site is sound, and it releases nobody from isolation.",
        Tables =
        [
            View(changes, "The whole program", row => row.By == Grouping.Program, "measure"),
            new TableView(changes.FlagTable, "Flags before and now, and lots and sites that are in one of the two only", [new ViewColumn("level", "Part", Kind: "by"), "change", "earlier_flag", "later_flag"]),
            View(changes, "Sites", row => row.By == Grouping.Site, new ViewColumn("level", "Site"), "measure") with { Folded = true },
            View(changes, "Lots", row => row.By == Grouping.Lot, new ViewColumn("level", "Lot"), "measure") with { Folded = true },
            new TableView(changes.SettingTable, "By what the two were made differently", ["setting", "earlier", "later"]),
            new TableView(changes.AnswerTable, "Answers that say something else, numbers aside", ["question", "earlier", "later"]),
        ],
    };

    private static TableView View(ChangeFindings changes, string caption, Func<ChangeRow, bool> keep, params ViewColumn[] first) => new(
        changes.FigureTable.Only(keep), caption,
        [.. first, "earlier_events", "earlier_trials", "earlier_estimate", "later_events", "later_trials", "later_estimate", "basis", "from_events", "from_trials", "to_events", "to_trials", "estimate", ViewColumn.Limits, ViewColumn.Remark]);
}
