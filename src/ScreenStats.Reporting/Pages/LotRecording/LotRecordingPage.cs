using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.LotRecording;

/// <summary>Runs with no lot recorded.</summary>
internal static class LotRecordingPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "lot-recording", "Runs with no lot recorded", findings.LotRecording,
        "Which lots these runs were of, and whether one of them was faulty.",
        "Share of runs without a lot, Wilson's limits, widened for sites and site-weeks. The fault that would be seen: the multiple of the program's rate of refuted positives (without flagged lots) with which the flag rule " +
        "flags the site, where the runs without a lot alone have it, in four programs of five; beside it the multiple with which it would flag the lot, if these runs were of one recorded lot.")
    {
        Tables = [new TableView(findings.LotRecording.Table, "Runs with no lot recorded",
        [
            ViewColumn.Part, "runs", "without_lot", "estimate", ViewColumn.Limits, "refuted", "refuted_without_lot", "seen_from", "recorded_seen_from", ViewColumn.Remark,
        ])],
        Caution = "A fault of a lot that nobody recorded cannot be seen here, and those tested with it cannot be found again.",
    };
}
