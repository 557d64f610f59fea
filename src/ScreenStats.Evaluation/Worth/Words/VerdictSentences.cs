using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>The verdict with its condition, how sure it is, and what would be best.</summary>
internal static class VerdictSentences
{
    /// <summary>Below this share of draws, and above its complement, it is called far from sure.</summary>
    private const double Sure = 0.8;

    public static IEnumerable<Sentence> Of(WorthFindings findings)
    {
        var words = new WorthWords(findings);
        if (findings.Judged is not { } judged)
        {
            yield return new Sentence("Whether screening is worth it cannot be said: there is no way of screening to judge.");
            yield break;
        }

        if (judged.Cost.Estimate is null || judged.Effect.Estimate is null)
        {
            yield return new Sentence($"Whether screening is worth it cannot be said: {judged.Cost.EstimateUndefined ?? judged.Effect.EstimateUndefined}.");
            yield break;
        }

        if (judged.NetBenefit.Estimate is not { } net)
        {
            yield return WithoutValue(findings, words, judged);
            yield break;
        }

        yield return Verdict(findings, words, judged, net);
        if (LadderSentences.Of(findings) is { } ladder) yield return ladder;
        yield return HowSure(findings, words, judged, net) with { BeginsParagraph = true };
        if (MeanSentences.Of(findings, judged, net) is { } mean) yield return mean;
        if (HorizonSentences.Of("worth.days", findings.Days, findings.KnowsImmunity) is { } horizon) yield return horizon;
        if (PeriodSentences.Of(findings) is { } periods) yield return periods with { BeginsParagraph = true };
        if (Best(findings, words, judged) is { } best) yield return best with { BeginsParagraph = true };
        if (OnAverage(findings, words) is { } average) yield return average;
    }

    private static Sentence Verdict(WorthFindings findings, WorthWords words, WorthOption judged, double net)
    {
        var opening = $"At these costs, over {{3}} days, and with one {words.One} worth {{0}} {{1}}, \"{{2}}\"{WorthWords.After(judged)} ";
        FigureReference[] first = [words.Value, words.Currency, WorthWords.Name(judged), words.Days];
        var plain = net > 0 ? "pays" : "does not pay";
        if (findings.Turn("weekly-incidence") is not { Present: not null } turn) return new Sentence(opening + plain + " at the central figures.", [.. first]);
        var present = WorthWords.Present(turn);
        var limits = turn.Lower is null || !WorthWords.Apart(present) ? "." : " ({6} interval {7} to {8}).";
        var turned = turn.Pays is WorthPays.Above or WorthPays.Below or WorthPays.Between;
        var now = (turned, findings.StatesIncidence) switch
        {
            (true, false) => ", with the rest as assumed; in these data it was {5}",
            (true, true) => ", with the rest as assumed; the program file states {5}",
            (false, false) => "; in these data {5} in 1,000 were infected each week",
            _ => "; the program file states {5} in 1,000 a week",
        };
        FigureReference[] all = [.. first, WorthWords.BreakEven(turn), present[0], words.Confidence, present[1], present[2], WorthWords.OtherBreakEven(turn)];
        var rises = turn.BreakEven < turn.OtherBreakEven;
        var condition = turn.Pays switch
        {
            WorthPays.Above => "pays while more than {4} in 1,000 people are infected each week",
            WorthPays.Below => "pays while fewer than {4} in 1,000 people are infected each week",
            WorthPays.Between => $"pays while between {(rises ? "{4} and {9}" : "{9} and {4}")} in 1,000 people are infected each week",
            WorthPays.Always => "pays at every number of infections that was looked at",
            WorthPays.Never => "pays at no number of infections that was looked at",
            _ => plain + " at the central figures",
        };
        return AnswerSentences.Compact(opening + condition + now + limits, all);
    }

    private static Sentence HowSure(WorthFindings findings, WorthWords words, WorthOption judged, double net)
    {
        var benefit = WorthWords.NetBenefit(judged);
        var verb = net > 0 ? "gains" : "comes to";
        var share = findings.PaysShare ?? 0;
        var sure = share is >= Sure or <= 1 - Sure ? "" : ", which is far from sure";
        var limits = WorthWords.Apart(benefit) ? " ({4} interval {5} to {6})" : "";
        // The value is a decision: no draw moves it, so that it is said beside.
        var ends = findings.PaysShareAtLower is not null && findings.PaysShareAtUpper is not null;
        return AnswerSentences.Compact(
            $"At the central figures \"{{13}}\" {verb} {{0}} {{1}} after its costs in {{2}} days for {{3}} {Figure.Plural(findings.People, "person", "people")}{limits}{sure}: it pays in {{7}} of the draws over everything that has a range but the value of one {words.One}, which is held at {{8}}"
            + (ends ? " ({10} at {9}, {12} at {11})." : "."),
            [benefit[0], words.Currency, words.Days, words.People, words.Confidence, benefit[1], benefit[2], words.PaysShare, words.Value, .. words.PaysShareAtEnds, WorthWords.Name(judged)]);
    }

    private static Sentence? Best(WorthFindings findings, WorthWords words, WorthOption judged)
    {
        if (findings.Best is not { } best) return null;
        if (best == judged) return new Sentence("Of the options \"{0}\" gains most at these figures, and it is the best in {1} of the draws.", WorthWords.Name(best), WorthWords.BestShare(best));
        if (best.IsNone) return new Sentence("At the central figures no screening at all gains most: it is the best in {0} of the draws.", WorthWords.BestShare(best));
        var none = findings.Options.FirstOrDefault(option => option.IsNone);
        return none?.BestShare is null
            ? new Sentence($"Of the options \"{{0}}\"{WorthWords.After(best)} gains most at these figures, {{1}} {{2}}; it is the best in {{3}} of the draws.",
                WorthWords.Name(best), WorthWords.NetBenefit(best)[0], words.Currency, WorthWords.BestShare(best))
            : new Sentence($"Of the options \"{{0}}\"{WorthWords.After(best)} gains most at these figures, {{1}} {{2}}; it is the best in {{3}} of the draws, and no screening in {{4}}.",
                WorthWords.Name(best), WorthWords.NetBenefit(best)[0], words.Currency, WorthWords.BestShare(best), WorthWords.BestShare(none));
    }

    // Where the mean of the draws speaks for another option than the central figures.
    private static Sentence? OnAverage(WorthFindings findings, WorthWords words)
    {
        var known = findings.Options.Where(option => option is { MeanNetBenefit: not null, IsAsDone: false }).ToList();
        if (known.Count < 2 || findings.Best is not { } best) return null;
        var most = known.MaxBy(option => option.MeanNetBenefit!.Value)!;
        if (most == best) return null;
        if (most.IsNone) return new Sentence("On average over the draws no screening comes out best: the draws lie less favourably than the central figures.");
        return new Sentence(
            $"On average over the draws \"{{0}}\"{WorthWords.After(most)} comes out best, with {{1}} {{2}}, because the draws with much infection weigh most in an average: whoever must be prepared for those will screen more, whoever goes by what is likeliest less.",
            WorthWords.Name(most), WorthWords.MeanNetBenefit(most), words.Currency);
    }

    private static Sentence WithoutValue(WorthFindings findings, WorthWords words, WorthOption judged)
    {
        var least = findings.Turn("value-of-effect");
        if (least is { Pays: WorthPays.Always })
            return new Sentence($"\"{{0}}\"{WorthWords.After(judged)} saves more than it costs at the central figures, whatever one {words.One} is worth.", WorthWords.Name(judged));
        if (least is not { BreakEven: not null }) return new Sentence($"What one {words.One} is worth is not stated, and at the central figures \"{{0}}\"{WorthWords.After(judged)} gains none.", WorthWords.Name(judged));
        return new Sentence(
            $"\"{{0}}\"{WorthWords.After(judged)} pays for whoever values one {words.One} at more than {{1}} {{2}}: what it is worth is not stated, so there is no verdict.",
            WorthWords.Name(judged), WorthWords.BreakEven(least), words.Currency);
    }
}
