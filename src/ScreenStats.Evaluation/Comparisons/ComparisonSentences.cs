using System.Collections.Immutable;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>Levels side by side, in words.</summary>
internal static class ComparisonSentences
{
    private const string Path = "comparison";

    // A design effect below this widens limits by less than a fortieth.
    private const double WorthSaying = 1.05;

    public static ImmutableArray<Sentence> Of(ComparisonFindings findings)
    {
        var (one, many) = (ComparisonWords.One(findings.By), ComparisonWords.Many(findings.By));
        if (findings.LevelCount == 0)
        {
            return [new Sentence(findings.Summaries.Any(summary => summary.Trials > 0) || findings.NotRecordedRuns > 0
                ? $"No {one} is recorded, so {many} cannot be compared."
                : $"No run was counted, so {many} cannot be compared.")];
        }

        if (findings.LevelCount == 1) return [new Sentence($"There is one {one} only, so there is nothing to compare it with.")];
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        var leading = findings.Summaries.Where(summary => summary.Leads).ToList();
        sentences.Add(Compared(findings, leading));
        sentences.AddRange(NotAdjusted(leading));
        foreach (var summary in leading) sentences.AddRange(new MeasureSentences(findings, summary).All().Select((sentence, index) => sentence with { BeginsParagraph = index == 0 }));
        var measures = sentences.Count;
        sentences.AddRange(LeftOut(findings, leading));
        var widened = leading.Where(summary => summary.DesignEffect >= WorthSaying).ToList();
        if (widened.Count > 0) sentences.Add(Clusters(widened));
        if (findings.NotRecordedRuns > 0)
        {
            sentences.Add(new Sentence(
                $"{{0}} counted {Figure.Plural(findings.NotRecordedRuns, "run has", "runs have")} no {one} recorded and {Figure.Plural(findings.NotRecordedRuns, "is", "are")} not compared.",
                Figure.Count(Path + ".notRecordedRuns", findings.NotRecordedRuns)));
        }

        if (sentences.Count > measures) sentences[measures] = sentences[measures] with { BeginsParagraph = true };
        sentences.Add(new Sentence(
            "What is not recorded is not adjusted for: who is tested, how often, and how much infection there is around a place may still explain a difference."));
        if (findings.By == "operator") sentences.Add(new Sentence("Operators are compared for training, not for discipline."));
        return sentences.ToImmutable();
    }

    private static Sentence Compared(ComparisonFindings findings, List<ComparisonSummary> leading)
    {
        var adjusted = leading.FirstOrDefault(summary => !summary.AdjustedFor.IsEmpty)?.AdjustedFor ?? [];
        var many = ComparisonWords.Many(findings.By);
        return new Sentence(
            adjusted.IsEmpty
                ? $"{{0}} {many} are compared as counted: there is nothing recorded to adjust for."
                : $"{{0}} {many} are compared: as counted, and as they would be if each had tested at the program's mix of {ComparisonWords.Adjusted(adjusted)}.",
            Figure.Count(Path + ".levelCount", findings.LevelCount));
    }

    // A reason that does not hold for every measure names those for which it does; a measure that cannot be compared at all has its own sentence.
    private static IEnumerable<Sentence> NotAdjusted(List<ComparisonSummary> leading)
    {
        var compared = leading.Where(summary => summary.P is not null).ToList();
        foreach (var reason in compared.SelectMany(summary => summary.NotAdjustedFor).Distinct(StringComparer.Ordinal))
        {
            var measures = compared.Where(summary => summary.NotAdjustedFor.Contains(reason)).Select(summary => ComparisonWords.Of(summary.Measure)).ToList();
            yield return new Sentence(measures.Count == compared.Count
                ? $"Not adjusted for {reason}."
                : $"{string.Join("; ", measures.Select((name, at) => at == 0 ? name : name[..1].ToLowerInvariant() + name[1..]))}: not adjusted for {reason}.");
        }
    }

    private static IEnumerable<Sentence> LeftOut(ComparisonFindings findings, List<ComparisonSummary> leading)
    {
        if (!findings.LeftOutLots.IsEmpty)
        {
            var names = findings.LeftOutLots.Length <= 5 ? Say.Names(Path + ".leftOutLots", findings.LeftOutLots, 0) : ("", []);
            var which = names.Text.Length > 0 ? $" ({names.Text})" : "";
            yield return new Sentence(
                $"Runs of lots that are flagged{which} are left out of what they are flagged for, so that a lot's fault is not laid at a {ComparisonWords.One(findings.By)}'s door; the table has the same with all runs.",
                [.. names.Figures]);
        }

        if (findings.OutbreakRuns > 0)
        {
            yield return new Sentence(
                "{0} " + Figure.Plural(findings.OutbreakRuns, "run was", "runs were") + " taken because of an outbreak and left out, because they were not screening as usual; the table has the same with all runs.",
                Figure.Count(Path + ".outbreakRuns", findings.OutbreakRuns));
        }
    }

    private static Sentence Clusters(List<ComparisonSummary> widened)
    {
        var largest = widened.MaxBy(summary => summary.DesignEffect)!;
        var what = largest.DesignEffectOf switch
        {
            "persons" => "the same people are tested again and again",
            "sites" => "sites differ",
            _ => "positive and unusable runs come in bursts at a site",
        };
        return new Sentence(
            $"Because {what}, runs say less than as many independent ones: tests and limits allow for it ({ComparisonWords.Of(largest.Measure)[..1].ToLowerInvariant()}{ComparisonWords.Of(largest.Measure)[1..]}: design effect {{0}}).",
            Figure.Number(FigurePath.Row(Path + ".summaries", largest.Key) + ".designEffect", largest.DesignEffect, Unit.Ratio));
    }
}
