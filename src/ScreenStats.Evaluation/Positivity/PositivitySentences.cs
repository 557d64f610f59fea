using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Positivity;

internal static class PositivitySentences
{
    private const string Program = "positivity.program";

    public static ImmutableArray<Sentence> Of(Table<PositivityRow> table)
    {
        var share = table.Rows.Single(row => row.Grouping == Grouping.Program).Share;
        if (share.Trials == 0) return [new Sentence("No valid test was counted, so there is no positivity.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        sentences.Add(new Sentence(
            $"{{0}} of {{1}} valid tests were positive: {{2}} ({{3}} to {{4}}, {ShareWords.Limits(share)}){ShareWords.Few(share)}.",
            Figure.Count(Program + ".events", share.Events), Figure.Count(Program + ".trials", share.Trials),
            Figure.Share(Program, share), Figure.Lower(Program, share), Figure.Upper(Program, share)));
        sentences.Add(ShareWords.Widening(Program, share));
        var periods = table.Rows.Where(row => row.Grouping == Grouping.Period && row.Tests > 0).ToList();
        if (periods.Count > 1)
        {
            // A period with few counts is highest by chance more often than not: it speaks only where there is no other.
            var peak = periods.Where(row => !row.Share.FewCounts).DefaultIfEmpty().MaxBy(row => row?.Share.Estimate) ?? periods.MaxBy(row => row.Share.Estimate)!;
            var path = FigurePath.Row("positivity.periods", peak.Key);
            sentences.Add(new Sentence(
                $"It was highest in the period from {{0}}: {{1}} of {{2}} valid tests, {{3}} ({{4}} to {{5}}){ShareWords.Few(peak.Share)}.",
                Figure.Day(path + ".periodStart", peak.PeriodStart), Figure.Count(path + ".positives", peak.Positives),
                Figure.Count(path + ".tests", peak.Tests), Figure.Share(path + ".share", peak.Share),
                Figure.Lower(path + ".share", peak.Share), Figure.Upper(path + ".share", peak.Share)));
        }

        return sentences.ToImmutable();
    }
}
