using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Detection;

internal static class DetectionSentences
{
    public static ImmutableArray<Sentence> Of(DetectionFindings findings)
    {
        var sentences = ImmutableArray.CreateBuilder<Sentence>();
        foreach (var (measure, what, none) in (ReadOnlySpan<(string, string, string?)>)
            [("refuted", "false positives", findings.RefutedUndefined), ("invalid", "inconclusive and invalid runs", findings.InvalidUndefined)])
        {
            if (none is not null)
            {
                sentences.Add(new Sentence($"How surely a lot with too many {what} would be flagged cannot be told: {none}."));
                continue;
            }

            if (Of(findings, measure, DetectionAnalysis.Tenth, 5) is { } five && Of(findings, measure, DetectionAnalysis.Tenth, 2) is { } two)
            {
                sentences.Add(new Sentence(
                    $"A lot with a tenth of the {(measure == "refuted" ? "tests" : "runs")} and five times the {what} would be flagged in {{0}} of 100 programs like this one; one with twice as many in {{1}}.",
                    OfHundred(five), OfHundred(two)));
            }
        }

        if (Of(findings, "refuted", "tenth-percentile", 5) is { } small)
        {
            sentences.Add(new Sentence(
                "One of the smallest lots here, with {0} tests, would be flagged at five times the false positives in {1} of 100: that no lot is flagged does not say that none is faulty.",
                Figure.Count(Path(small) + ".trials", small.Trials), OfHundred(small)));
        }

        return sentences.ToImmutable();
    }

    private static DetectionRow? Of(DetectionFindings findings, string measure, string size, double times)
    {
        foreach (var row in findings.Rows)
        {
            if (row.Measure == measure && row.Size == size && row.Times == times) return row.Chance is null ? null : row;
        }

        return null;
    }

    private static FigureReference OfHundred(DetectionRow row) => Figure.Count(Path(row) + ".ofHundred", row.OfHundred ?? 0);

    private static string Path(DetectionRow row) => FigurePath.Row("detection.rows", row.Key);
}
