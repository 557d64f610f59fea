using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.LotRecording;

internal static class LotRecordingTables
{
    public static Table<LotRecordingRow> Table(ImmutableArray<LotRecordingRow> rows) => new(
        "lot-recording",
        "Runs with no lot recorded",
        "Runs without a lot are in no comparison of lots. A fault of their lots would show only by flagging their site: from how many times the program's rate of refuted positives on, and from how many if the lot were recorded.",
        [
            LevelColumns.By<LotRecordingRow>(row => row.Grouping),
            LevelColumns.Level<LotRecordingRow>(row => row.Level),
            new("runs", "Runs", Unit.Count, "All counted runs.", row => Cell.Count(row.WithoutLot.Trials)),
            new("without_lot", "Without a lot", Unit.Count, "Runs with no lot recorded.", row => Cell.Count(row.WithoutLot.Events)),
            .. ShareColumns.For<LotRecordingRow>(row => row.WithoutLot),
            new("tests_without_lot", "Valid tests without a lot", Unit.Count, "Valid tests with no lot recorded.", row => Cell.Count(row.TestsWithoutLot)),
            new("refuted", "Refuted", Unit.Count, "Refuted positives.", row => Cell.Count(row.Refuted)),
            new("refuted_without_lot", "Refuted without a lot", Unit.Count, "Refuted positives with no lot recorded.", row => Cell.Count(row.RefutedWithoutLot)),
            new("seen_from", "Fault seen from", Unit.Ratio, "Times the program's rate of refuted positives that the runs without a lot must have for the site to be flagged in four programs of five.", row => Cell.NumberOr(row.SeenFrom, row.SeenFromUndefined ?? "")) { Method = MethodNames.FlagCurve },
            new("recorded_seen_from", "Were the lot recorded", Unit.Ratio, "The same for the lot to be flagged, if these runs were of one recorded lot.", row => Cell.NumberOr(row.RecordedSeenFrom, row.RecordedSeenFromUndefined ?? "")) { Method = MethodNames.FlagCurve },
        ],
        rows);
}
