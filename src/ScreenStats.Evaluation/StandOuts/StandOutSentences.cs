using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.StandOuts;

/// <summary>What to say of lots and sites together.</summary>
internal static class StandOutSentences
{
    private const int Named = 5;

    public static ImmutableArray<Sentence> Of(StandOutFindings findings)
    {
        if (findings.Rows.IsEmpty) return [new Sentence("No run was counted, so there is nothing to compare.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        var standing = findings.Rows.Where(row => row.StandsOut).ToList();
        sentences.AddRange(standing.Take(Named).Select(One));
        if (standing.Count > Named) sentences.Add(new Sentence("The table has all that stand out; these are the first {0}.", Figure.Count("standOuts.named", Named)));
        if (findings.Unremarkable > 0)
        {
            sentences.Add(new Sentence(
                $"{{0}} lots and sites were compared and {(findings.Unremarkable == 1 ? "stands" : "stand")} out by nothing. That does not prove them good: what a fault would have to be like to be seen is told below.",
                Figure.Count("standOuts.unremarkable", findings.Unremarkable)));
        }

        if (findings.NotCompared > 0)
        {
            sentences.Add(new Sentence(
                "{0} lots and sites could be compared by nothing: with no event, or with no other lot or site beside them. Nothing is known of these.",
                Figure.Count("standOuts.notCompared", findings.NotCompared)));
        }

        return sentences.ToImmutable();
    }

    private static Sentence One(StandOutRow row)
    {
        var path = FigurePath.Row("standOuts.rows", row.Key);
        var name = Figure.Name(path + ".level", row.Level);
        var kind = row.By == "lot" ? "Lot" : "Site";
        var same = row.By == "lot" ? "at the same sites in the same weeks" : "with the same lots in the same weeks";
        var events = row.Measure switch
        {
            "refuted" => "refuted positives",
            "invalid" => "inconclusive and invalid runs",
            "cases" => "cases",
            _ => "failed positive controls",
        };
        if (row.Expected is not { } expected)
        {
            return new Sentence($"{kind} {{0}} is flagged for its {events}, and no other {row.By} was used {same} to compare it with: places and times may have a part in it.", name);
        }

        var counts = $"{{1}} {events} where {{2}} would be expected if all {row.By}s were alike {same}";
        var figures = new List<FigureReference> { name, Figure.Count(path + ".observed", row.Observed), Say.Ratio(path + ".expected", expected) };
        if (row.Ratio.Estimate is { } ratio)
        {
            counts += $" ({{3}} times the others' {(row.Measure is "refuted" or "cases" ? "rate" : "odds")})";
            figures.Add(Say.Ratio(path + ".ratio.estimate", ratio));
        }

        return row.Verdict switch
        {
            StandOutVerdict.MayMissInfections => new Sentence($"{kind} {{0}} may miss infected people: {counts}.", [.. figures]),
            StandOutVerdict.StandsOut => new Sentence($"{kind} {{0}} stands out: {counts}.", [.. figures]),
            _ => new Sentence($"{kind} {{0}} is flagged among all {row.By}s for its {events}, but {counts}: places and times have a part in it, and they, too, need looking into.", [.. figures]),
        };
    }
}
