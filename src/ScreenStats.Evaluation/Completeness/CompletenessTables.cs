using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Completeness;

internal static class CompletenessTables
{
    public static Table<CompletenessRow> Completeness(ImmutableArray<CompletenessRow> rows) => new(
        "completeness",
        "What is recorded",
        "How much of each column has a usable value. A blank is \"not recorded\", never \"no\"; a column without a heading in the export is not recorded at all.",
        [
            new("export", "Export", Unit.Text, "Which export.", row => Cell.Text(row.Export)),
            new("column", "Column", Unit.Text, "Canonical name of the column.", row => Cell.Text(row.Column)),
            new("mapped", "In the export", Unit.Text, "yes where a heading of the export was taken for this column, else no.", row => Cell.Text(row.Mapped ? "yes" : "no")),
            new("rows", "Rows", Unit.Count, "Rows.", row => Cell.Count(row.Rows)),
            new("recorded", "Recorded", Unit.Count, "Rows with a usable value.", row => Cell.Count(row.Recorded)),
            new("not_recorded", "Not recorded", Unit.Count, "Rows without one.", row => Cell.Count(row.NotRecorded)),
            new("not_recorded_share", "Share not recorded", Unit.Proportion, "Rows without a usable value divided by all rows.", row => Cell.NumberOr(row.NotRecordedShare, row.NotRecordedShareUndefined ?? "")) { Method = Methods.MethodNames.Share },
        ],
        rows);
}
