using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>For how much infection the answer holds: the condition that belongs to it.</summary>
internal static class IncidenceSentences
{
    /// <summary>The last days of the data against all of them, and between which incidences the option is the one to choose.</summary>
    public static IEnumerable<Sentence> Of(CadenceFindings findings)
    {
        if (findings.Recent is { } recent)
        {
            yield return Last(findings, recent);
            if (recent.Pending > 0) yield return new Sentence("Positive runs of those days that still wait for a confirmatory result: {0}.", Figure.Count("cadence.recent.pending", recent.Pending));
        }

        if (Range(findings) is { } range) yield return range;
    }

    private static Sentence Last(CadenceFindings findings, CadenceRecent recent)
    {
        var text = "Of the {0} cases {1} fell in the last {2} days of the data: {3} infections per 100,000 person-days ({4} interval {5} to {6}) against {7} over all";
        if (recent.Ratio is { Estimate: not null, Lower: not null, Upper: not null }) text += ", {8} times the rate of the days before ({9} to {10})";
        text += recent.Option is not { } option || findings.Leading is not { } leading ? "."
            : option != leading.Option ? "; were infection to stay " + (recent.Ratio.Estimate > 1 ? "as frequent" : "as rare") + " as that, the option would be \"{11}\"" + Span(recent) + "."
            : recent.OptionAtLower == recent.OptionAtUpper ? "; were it to stay so, the option would be the same." : "; were it to stay so, the option would be the same" + Span(recent) + ".";
        return AnswerSentences.Compact(text, Figures(findings, recent));
    }

    private static FigureReference[] Figures(CadenceFindings findings, CadenceRecent recent)
    {
        const string Path = "cadence.recent";
        var rate = CadenceFigures.Of(Path + ".perHundredThousand", recent.PerHundredThousand, Unit.Ratio);
        var ratio = CadenceFigures.Of(Path + ".ratio", recent.Ratio, Unit.Ratio);
        return
        [
            Figure.Count(Path + ".allCases", recent.AllCases), Figure.Count(Path + ".cases", recent.Cases), Figure.Count(Path + ".days", recent.Days), rate[0], new CadenceFigures(findings).Confidence, rate[1], rate[2],
            Figure.Number(Path + ".allPerHundredThousand.estimate", recent.AllPerHundredThousand.Estimate, Unit.Ratio), ratio[0], ratio[1], ratio[2],
            Figure.Name(Path + ".option", recent.Option ?? ""), Figure.Name(Path + ".optionAtLower", recent.OptionAtLower ?? ""), Figure.Name(Path + ".optionAtUpper", recent.OptionAtUpper ?? ""),
        ];
    }

    private static string Span(CadenceRecent recent) => recent.OptionAtLower == recent.OptionAtUpper ? "" : " (\"{12}\" to \"{13}\" over that interval)";

    private static Sentence? Range(CadenceFindings findings)
    {
        var at = findings.Ranges.IndexOf(findings.Ranges.FirstOrDefault(range => range.HasData)!);
        if (at < 0 || findings.Ranges.Length < 2) return null;
        FigureReference Name(int index) => Figure.Name(FigurePath.Row("cadence.ranges", findings.Ranges[index].Key) + ".option", findings.Ranges[index].Option);
        var path = FigurePath.Row("cadence.ranges", findings.Ranges[at].Key);
        var (from, to) = (Figure.Number(path + ".from", findings.Ranges[at].From, Unit.Ratio), Figure.Number(path + ".to", findings.Ranges[at].To, Unit.Ratio));
        if (at == 0) return new Sentence("All else as assumed, \"{0}\" is the option up to {1} infections per 100,000 person-days; with more it is \"{2}\" next.", Name(0), to, Name(1));
        return at == findings.Ranges.Length - 1
            ? new Sentence("All else as assumed, \"{0}\" is the option from {1} infections per 100,000 person-days on; with fewer it is \"{2}\" next.", Name(at), from, Name(at - 1))
            : new Sentence("All else as assumed, \"{0}\" is the option between {1} and {2} infections per 100,000 person-days; with fewer it is \"{3}\" next, with more \"{4}\".", Name(at), from, to, Name(at - 1), Name(at + 1));
    }
}
