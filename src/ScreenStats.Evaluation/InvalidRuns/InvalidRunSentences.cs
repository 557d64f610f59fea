using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.InvalidRuns;

internal static class InvalidRunSentences
{
    private const string Program = "invalidRuns.program";

    public static ImmutableArray<Sentence> Of(Table<InvalidRunRow> table)
    {
        var row = table.Rows.Single(row => row.Grouping == Grouping.Program);
        var share = row.Share;
        if (share.Trials == 0) return [new Sentence("No run was counted, so there is no invalid-run rate.")];
        return
        [
            new Sentence(
                $"{{0}} of {{1}} runs gave no valid result: {{2}} inconclusive (a test line but no control line) and {{3}} invalid (no line). " +
                $"That is {{4}} ({{5}} to {{6}}, {ShareWords.Limits(share)}){ShareWords.Few(share)}.",
                Figure.Count(Program + ".events", share.Events), Figure.Count(Program + ".trials", share.Trials),
                Figure.Count("invalidRuns.inconclusive", row.Inconclusive), Figure.Count("invalidRuns.invalid", row.Invalid),
                Figure.Share(Program, share), Figure.Lower(Program, share), Figure.Upper(Program, share)),
            ShareWords.Widening(Program, share),
        ];
    }
}
