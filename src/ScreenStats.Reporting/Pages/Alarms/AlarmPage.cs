using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Alarms;

/// <summary>When somebody would have been told.</summary>
internal static class AlarmPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "alarms", "Which alarms would have come, and when", findings.Alarms,
        "No alarm is no proof that all is well: a small lot, or a fault that is as strong in every lot beside it, raises none. How much of a lot is left on hand is not in the exports.",
        "The command alarms, replayed for the end of every day with what was collected and reported by then; it never sees a later day. Rules of evidence hold the chance of any false alarm over all days and all lots " +
        "or sites together, the cumulative sum one false alarm in the days of the program file; the formulas stand under Methods. Failed controls, controls missed where the program file asks for them, " +
        "expired lots and kits with at least three runs too many are counted.")
    {
        Caution = "An alarm never says that a positive was false or that anybody may return to work: that is for the confirmatory test and for local rules. What is said of operators is for training, not for discipline.",
        Charts = AlarmFigures.Of(findings),
        Tables =
        [
            new TableView(findings.Alarms.Tables[0], "Every alarm raised",
            [
                new ViewColumn("level", "Where", Kind: "by"), "rule", "since", "until", "status", "evidence",
            ]),
            new TableView(findings.Alarms.Tables[1], "Lots: when they would have been known",
            [
                "lot", "flagged", "alarm_day", "rule", "refuted_before", "refuted_by", "refuted", "positives_after", "runs_after", "last_use",
            ]),
            TableViews.Whole(findings.Alarms.Tables[2]) with { Folded = true },
        ],
    };
}
