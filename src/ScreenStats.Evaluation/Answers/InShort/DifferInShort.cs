using System.Collections.Immutable;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Comparisons.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>Whether levels differ, in one sentence: the first measure by which they do with its range, the others by name.</summary>
internal static class DifferInShort
{
    private const string Path = "comparison";

    /// <summary>What is known.</summary>
    public static Sentence Of(ComparisonFindings findings)
    {
        var leading = findings.Summaries.Where(summary => summary.Leads).ToList();
        var compared = leading.Where(summary => summary is { P: not null, Undefined: null }).ToList();
        if (findings.LevelCount < 2 || leading.Count == 0) return findings.Sentences[0] with { BeginsParagraph = false };
        if (compared.Count == 0) return new Sentence($"These data cannot say: by no measure can {ComparisonWords.Many(findings.By)} be compared, as {leading[0].Undefined ?? "no two have trials in the same stratum"}.");
        var differ = compared.Where(summary => summary.Differ).ToList();
        return differ.Count == 0 ? Alike(findings, compared) : Differ(findings, differ);
    }

    private static Sentence Differ(ComparisonFindings findings, List<ComparisonSummary> differ)
    {
        var (summary, many, at) = (differ[0], ComparisonWords.Many(findings.By), ComparisonWords.At(findings.By));
        var figures = ImmutableArray.CreateBuilder<FigureReference>();
        string Add(FigureReference figure)
        {
            figures.Add(figure);
            return FormattableString.Invariant($"{{{figures.Count - 1}}}");
        }

        var text = $"{ComparisonWords.Of(summary.Measure)} differs between {many} by more than chance{After(summary)} (p {Add(P(summary))})";
        var known = findings.RowsOf(summary).Where(row => row.Adjusted.Estimate is not null).ToList();
        if (known.Count > 1)
        {
            // Operators are people: no sentence names one.
            var named = findings.By != ComparisonWords.Of(CompareBy.Operator);
            string Rate(ComparisonRow row, bool limits)
            {
                var path = FigurePath.Row(Path + ".rows", row.Key);
                string Share(string figure, double? value) => Add(Figure.Number(path + ".adjusted." + figure, value, Unit.Proportion));
                var said = Share("estimate", row.Adjusted.Estimate);
                if (limits && row.Adjusted is { Lower: not null, Upper: not null })
                    said += $" ({Add(Say.Confidence(Path + ".confidence", findings.Confidence))} interval {Share("lower", row.Adjusted.Lower)} to {Share("upper", row.Adjusted.Upper)})";
                return said + (named ? $" {at} {Add(Figure.Name(path + ".level", row.Level))}" : "");
            }

            text += $", from {Rate(known.MinBy(row => row.Adjusted.Estimate)!, false)} to {Rate(known.MaxBy(row => row.Adjusted.Estimate)!, true)}";
        }

        var others = differ.Count > 1 ? "; so it does by other measures" : "";
        return new Sentence($"{text}{others}; who was tested there may explain it.", figures.ToImmutable());
    }

    private static Sentence Alike(ComparisonFindings findings, List<ComparisonSummary> compared)
    {
        var names = compared.Select((summary, index) => (index == 0 ? ComparisonWords.Of(summary.Measure) : Small(ComparisonWords.Of(summary.Measure))) + FormattableString.Invariant($" (p {{{index}}})")).ToList();
        var list = names.Count == 1 ? names[0] : string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1];
        return new Sentence(
            $"{list} {(names.Count == 1 ? "does" : "do")} not differ between {ComparisonWords.Many(findings.By)} by more than chance{After(compared[0])}, which does not prove them alike.",
            [.. compared.Select(P)]);
    }

    private static string After(ComparisonSummary summary) => summary.AdjustedFor.IsEmpty ? "" : $" after adjustment for {ComparisonWords.Adjusted(summary.AdjustedFor)}";

    private static FigureReference P(ComparisonSummary summary) => Figure.Number(FigurePath.Row(Path + ".summaries", summary.Key) + ".p", summary.P, Unit.PValue);

    private static string Small(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
