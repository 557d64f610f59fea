using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Comparisons;

/// <summary>Levels side by side, in words.</summary>
internal static class ComparisonSentences
{
    public static ImmutableArray<Sentence> Of(ComparisonFindings findings) =>
        [new Sentence("{0} levels are compared.", Figure.Count("comparison.levelCount", findings.LevelCount))];
}
