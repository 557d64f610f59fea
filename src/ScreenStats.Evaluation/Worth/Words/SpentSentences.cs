using ScreenStats.Evaluation.Cadence.Words;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>What screening cost and did.</summary>
internal static class SpentSentences
{
    public static IEnumerable<Sentence> Of(WorthFindings findings)
    {
        var words = new WorthWords(findings);
        if (findings.Figure("total-cost") is not { } total || findings.Costs.First(item => item.Item == "screens").Units.Estimate is not > 0) yield break;
        var screens = Figure.Number("worth.costs[screens].units.estimate", findings.Costs.First(item => item.Item == "screens").Units.Estimate, Unit.Count);
        var sum = WorthWords.Of(total);
        if (total.Figure.Estimate is null)
        {
            if (total.Figure.Lower is > 0)
                yield return new Sentence("Over the time of the data screening cost at least {0} {1} for {2} runs: not everything that it takes is priced and counted.", sum[1], words.Currency, screens);
        }
        else
        {
            var (each, perCase) = (WorthWords.Of(findings.Figure("cost-per-screen")!), findings.Figure("cost-per-case")!);
            var template = "Over the time of the data screening cost {0} {1} for {2} runs" + (Ranged(total) ? ", from {3} to {4} over the ranges of the prices" : "") + ": {5} for each run"
                + (perCase.Figure.Estimate is null ? "; no case was found to share it." : " and {6} for each case found, isolation, days lost to false alarms and any audits of negatives included.");
            yield return AnswerSentences.Compact(template, [sum[0], words.Currency, screens, sum[1], sum[2], each[0], WorthWords.Of(perCase)[0]]);
        }

        if (Lost(findings, words) is { } lost) yield return lost with { BeginsParagraph = true };
        if (Real(findings, words) is { } real) yield return real;
        if (PerEffect(findings, words) is { } effect) yield return effect with { BeginsParagraph = true };
        if (Margin(findings, words) is { } margin) yield return margin;
    }

    private static bool Ranged(WorthFigure figure) => figure.Figure.Lower is not null && figure.Figure.Upper is not null && figure.Figure.Upper > figure.Figure.Lower;

    private static Sentence? Lost(WorthFindings findings, WorthWords words)
    {
        if (findings.Figure("days-kept-out-per-day-lost", "modelled") is not { Figure.Estimate: not null } ratio) return null;
        var (kept, lost, each) = (WorthWords.Of(findings.Figure("days-kept-out", "modelled")!), WorthWords.Of(findings.Figure("days-lost", "modelled")!), WorthWords.Of(ratio));
        var limits = ratio.Figure.Lower is not null && ratio.Figure.Upper is not null && WorthWords.Apart(each);
        var counted = findings.Figure("days-lost", "counted");
        var open = findings.Costs.FirstOrDefault(item => item.Item == "unsettled-positives");
        return AnswerSentences.Compact(
            "Modelled as it was done" + (findings.LeavesOutFlaggedLots ? ", without the false alarms of flagged lots" : "") + ", screening keeps {0} infectious days out of work in {1} days and loses {2} working days to false alarms: {3} for each day lost" + (limits ? " ({4} interval {5} to {6})" : "")
            + (counted is { Figure.Estimate: not null } ? "; counted over the time of the data" + (findings.LeavesOutFlaggedLots ? ", those of flagged lots among them" : "") + ", {7} working days were lost to refuted positives" + (open is { Units.Estimate: > 0 } ? " and {8} days to positives never settled, real ones among them." : ".") : "."),
            [kept[0], words.Days, lost[0], each[0], words.Confidence, each[1], each[2], counted is null ? lost[0] : WorthWords.Of(counted)[0], Figure.Number("worth.costs[unsettled-positives].units.estimate", open?.Units.Estimate, Unit.Count, "not known")]);
    }

    // What the half-false prevalence is held against: the alarms that there were.
    private static Sentence? Real(WorthFindings findings, WorthWords words)
    {
        if (findings.Figure("real-positives", "counted") is not { Figure.Estimate: not null } all) return null;
        var (figures, without) = (WorthWords.Of(all, Unit.Proportion), findings.Figure("real-positives", "counted-without-flagged-lots"));
        var template = "Of the positives that were followed up {0} were real ({1} interval {2} to {3})";
        if (without is not { Figure.Estimate: not null }) return new Sentence(template + ".", figures[0], words.Confidence, figures[1], figures[2]);
        var others = WorthWords.Of(without, Unit.Proportion);
        return new Sentence(template + ", and of those of lots that are not flagged {4} ({5} to {6}).", figures[0], words.Confidence, figures[1], figures[2], others[0], others[1], others[2]);
    }

    private static Sentence? PerEffect(WorthFindings findings, WorthWords words)
    {
        if (findings.Figure("cost-per-infectious-day") is not { Figure.Estimate: not null } day) return null;
        var infection = findings.Figure("cost-per-infection-averted");
        var days = WorthWords.Of(day);
        string Limits(WorthFigure figure, int from) => figure.Figure switch
        {
            { Lower: not null, Upper: not null } => !WorthWords.Apart(WorthWords.Of(figure)) ? "" : FormattableString.Invariant($" ({{2}} interval {{{from}}} to {{{from + 1}}})"),
            { Lower: not null } => FormattableString.Invariant($" ({{2}} confidence of at least {{{from}}}, with no upper limit)"),
            _ => "",
        };
        string[] left = [.. findings.Costs.Any(item => item.Item == "audit-tests") ? new[] { "audits of negatives" } : [], .. findings.LeavesOutFlaggedLots ? new[] { "the false alarms of flagged lots" } : []];
        var template = "Modelled" + (left.Length == 0 ? "" : " without " + string.Join(" and ", left)) + ", it spends {0} {1} for each infectious day removed" + Limits(day, 3);
        if (infection is not { Figure.Estimate: not null }) return AnswerSentences.Compact(template + ".", [days[0], words.Currency, words.Confidence, days[1], days[2]]);
        var averted = WorthWords.Of(infection);
        return AnswerSentences.Compact(template + " and {5} for each infection averted" + Limits(infection, 6) + ": the days of infections averted are in both, so the two are not to be added.", [days[0], words.Currency, words.Confidence, days[1], days[2], averted[0], averted[1], averted[2]]);
    }

    private static Sentence? Margin(WorthFindings findings, WorthWords words)
    {
        if (findings.Judged is not { } judged || findings.Figure("marginal-cost", judged.Option) is not { Figure.Estimate: not null } marginal) return null;
        if (findings.Figure("average-cost", judged.Option) is not { Figure.Estimate: not null } average) return null;
        return new Sentence(
            $"The last step of frequency, to \"{{0}}\", costs {{1}} {{2}} for each {words.One} that it adds, where the average over all screening is {{3}}: judge a step by the former.",
            WorthWords.Name(judged), WorthWords.Of(marginal)[0], words.Currency, WorthWords.Of(average)[0]);
    }
}
