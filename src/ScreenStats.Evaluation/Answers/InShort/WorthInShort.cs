using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Evaluation.Worth.Words;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>Whether screening is worth it, in one sentence: when the option judged pays, how much infection there was and was last, and how sure that is.</summary>
internal static class WorthInShort
{
    /// <summary>What is known.</summary>
    public static Sentence Of(WorthFindings findings)
    {
        var said = findings.VerdictSentences[0] with { BeginsParagraph = false };
        if (findings.Judged is not { NetBenefit.Estimate: { } net } judged) return said;
        var words = new WorthWords(findings);
        var turn = findings.Turn("weekly-incidence");
        var sure = findings.PaysShare is null ? "" : "; it pays in {0} of the draws";
        if (turn is not { Present: not null })
            return AnswerSentences.Compact($"At these costs, over {{3}} days, \"{{1}}\"{WorthWords.After(judged)} {(net > 0 ? "pays" : "does not pay")} at the central figures, with one {words.One} worth {{2}} {{4}}{sure}.", [words.PaysShare, WorthWords.Name(judged), words.Value, words.Days, words.Currency]);
        var (present, last) = (WorthWords.Present(turn), findings.Periods.Length > 1 ? findings.Periods.Skip(1).MinBy(row => row.Days) : null);
        var recent = last is null ? [] : PeriodSentences.Incidence(last);
        var rises = turn.BreakEven < turn.OtherBreakEven;
        var condition = turn.Pays switch
        {
            WorthPays.Above => "pays while more than {2} in 1,000 people are infected each week",
            WorthPays.Below => "pays while fewer than {2} in 1,000 people are infected each week",
            WorthPays.Between => $"pays while between {(rises ? "{2} and {3}" : "{3} and {2}")} in 1,000 people are infected each week",
            WorthPays.Always => "pays however many in 1,000 people are infected each week",
            WorthPays.Never => "pays at no number in 1,000 people infected each week",
            _ => (net > 0 ? "pays" : "does not pay") + " at the central figures, by how many in 1,000 people are infected each week",
        };
        return AnswerSentences.Compact(
            $"At these costs \"{{1}}\"{WorthWords.After(judged)} {condition}: {(findings.StatesIncidence ? "{4} is stated" : "it was {4}")}" + (turn.Lower is null || !WorthWords.Apart(present) ? "" : " ({5} interval {6} to {7})")
            + (last is null ? "" : ", in the last {8} days {9}" + (recent.Length > 1 ? " ({10} to {11})" : "")) + sure + ".",
            [
                words.PaysShare, WorthWords.Name(judged), WorthWords.BreakEven(turn), WorthWords.OtherBreakEven(turn), present[0], words.Confidence, present[1], present[2],
                last is null ? words.Days : PeriodSentences.Days(last), recent.ElementAtOrDefault(0) ?? words.Days, recent.ElementAtOrDefault(1) ?? words.Days, recent.ElementAtOrDefault(2) ?? words.Days,
            ]);
    }
}
