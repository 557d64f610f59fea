using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Controls;

/// <summary>What control swabs showed.</summary>
internal static class ControlPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "controls", "What control swabs showed", findings.Controls,
        "Control swabs are run when somebody decides to; they do not show how devices do on people. Controls are few: a lot or an operator may be at fault without one that failed.",
        "Runs of control swabs are kept out of all other figures. Observed against expected; failed controls of a lot or an operator are compared with the others of the same site, those of a " +
        "site with all others, by an exact test adjusted for the number compared (Holm). A failed control leaves in doubt the runs of its site and lot from the last passed control of its kind to the " +
        "next: days count whole, so at most so many. A start without a control is a first day with no passed control on or before it. Figures by operator and by kit stand in the files.")
    {
        Caution = findings.Controls.Failed > 0 ? "A failed control is a reason to stop with that lot at that site until the cause is found. Whether people are tested again is for local rules and licensed practitioners." : "",
        Tables =
        [
            Observed(findings, Grouping.Program, "Control swabs, expected against observed", "expected"),
            new TableView(findings.Controls.BracketTable, "Failed controls and the screening runs they leave in doubt",
                ["site", "lot", "day", "time", "expected", "observed", "last_passed", "next_passed", "runs", "positives", "negatives"]),
            Observed(findings, Grouping.Site, "Control swabs by site", ViewColumn.Level("Site"), "expected"),
            Observed(findings, Grouping.Lot, "Control swabs by lot", ViewColumn.Level("Lot"), "expected"),
            new TableView(findings.Controls.DutyTable.Only(row => row.Grouping == Grouping.Program), "Occasions for a control swab, and how many passed without one",
                ["trigger", "required", "due", "missed", "estimate", ViewColumn.Limits, "runs_without_control", ViewColumn.Remark]),
            new TableView(findings.Controls.StartTable, "Started without a control swab", ["trigger", "level", "site", "required", "first_day", "first_control_day", "runs_without_control"]),
        ],
    };

    private static TableView Observed(Findings findings, Grouping grouping, string caption, params ViewColumn[] names) => new(
        findings.Controls.ControlTable.Only(row => row.Grouping == grouping), caption,
        [.. names, "runs", "as_expected", "failed", "estimate", ViewColumn.Limits, .. grouping == Grouping.Program ? Array.Empty<ViewColumn>() : ["expected_events", "p_holm"], ViewColumn.Remark]);
}
