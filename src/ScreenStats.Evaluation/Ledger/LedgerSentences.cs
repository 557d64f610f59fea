using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Ledger;

internal static class LedgerSentences
{
    public static ImmutableArray<Sentence> Of(LedgerFindings ledger, bool hasConfirmatory)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            "Every row is accounted for: of {0} rows of the screening export {1} are counted, {2} were set aside, {3} repeat an earlier row, " +
            "{4} are runs of control swabs, and {5} are kept out (people with symptoms, or contacts of a case).",
            Figure.Count("ledger.read", ledger.Read), Figure.Count("ledger.counted", ledger.Counted), Figure.Count("ledger.setAside", ledger.SetAside),
            Figure.Count("ledger.duplicates", ledger.Duplicates), Figure.Count("ledger.controlRuns", ledger.ControlRuns), Figure.Count("ledger.keptOut", ledger.KeptOut)));
        if (ledger.Rows.FirstOrDefault(row => row.Key == "confirmatory:read") is { } read)
        {
            var counted = ledger.Rows.Single(row => row.Key == "confirmatory:counted");
            sentences.Add(new Sentence(
                "Of {0} rows of the confirmatory export {1} are counted.",
                Figure.Count(FigurePath.Row("ledger.rows", read.Key) + ".rows", read.Rows),
                Figure.Count(FigurePath.Row("ledger.rows", counted.Key) + ".rows", counted.Rows)));
        }
        else if (!hasConfirmatory)
        {
            sentences.Add(new Sentence("There is no confirmatory export: no positive can be followed up."));
        }

        return sentences.ToImmutable();
    }
}
