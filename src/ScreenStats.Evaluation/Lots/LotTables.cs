using System.Collections.Immutable;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Lots;

internal static class LotTables
{
    public static Table<LotFinding> Lots(ImmutableArray<LotFinding> rows) => new(
        "lots",
        "Lots",
        "Each lot with its counts and the exact chance of as many refuted positives, and of as many inconclusive and invalid runs, if all lots " +
        "were alike. Runs without a lot are shown, not tested. Inconclusive and invalid runs are judged without the sites flagged for them.",
        [
            new("lot", "Lot", Unit.Text, "Name of the lot; (none) where none is recorded.", row => Cell.Text(row.Lot)),
            .. JudgedColumns.For<LotFinding>(),
        ],
        rows);
}
