using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>The verdict in one sentence: when the option judged pays, when no screening does, how much infection there was and was last, and how sure that is.</summary>
internal static class InShortSentences
{
    /// <summary>Null where there is no break-even that more infection is needed for: the verdict is short then.</summary>
    public static Sentence? Of(WorthFindings findings)
    {
        if (findings.Judged is not { NetBenefit.Estimate: not null } judged || findings.PaysShare is null) return null;
        if (findings.Turn("weekly-incidence") is not { Pays: WorthPays.Above, BreakEven: not null, Present: not null } turn) return null;
        var words = new WorthWords(findings);
        var (present, last) = (WorthWords.Present(turn), Last(findings));
        var recent = last is null ? [] : PeriodSentences.Incidence(last);
        var none = findings.Ladder.FirstOrDefault(rung => rung is { IsNone: true, From: 0, To: not null });
        var most = findings.Ladder.FirstOrDefault(rung => rung is { IsPresent: true, IsNone: false } && rung.Option != judged.Option);
        var text = $"At these costs \"{{0}}\"{WorthWords.After(judged)} pays while more than {{1}} in 1,000 people are infected each week"
            + (none is null ? ": " : ", and no way of screening below {2}: ")
            + (findings.StatesIncidence ? "the program file states {3}" : "it was {3}") + (turn.Lower is null || !WorthWords.Apart(present) ? "" : " ({4} interval {5} to {6})")
            + (last is null ? "" : " over all days" + (most is null ? "" : ", where \"{12}\" gains most,") + " and {8}" + (recent.Length > 1 ? " ({9} to {10})" : "") + " in the last {11}")
            + "; it pays in {7} of the draws over everything that has a range but the value of " + $"one {words.One}.";
        return AnswerSentences.Compact(text,
        [
            WorthWords.Name(judged), WorthWords.BreakEven(turn), none is null ? words.Days : WorthWords.To(none), present[0], words.Confidence, present[1], present[2], words.PaysShare,
            recent.ElementAtOrDefault(0) ?? words.Days, recent.ElementAtOrDefault(1) ?? words.Days, recent.ElementAtOrDefault(2) ?? words.Days, last is null ? words.Days : PeriodSentences.Days(last), most is null ? words.Days : WorthWords.Name(most),
        ]);
    }

    private static WorthPeriod? Last(WorthFindings findings) => findings.Periods.Length > 1 ? findings.Periods.Skip(1).MinBy(row => row.Days) : null;
}
