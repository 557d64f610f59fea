using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>Whether screening is worth it, in words.</summary>
internal static class WorthSentences
{
    public static ImmutableArray<Sentence> Of(WorthFindings findings)
    {
        if (!findings.AnyStated) return [new Sentence("Whether screening is worth it cannot be said: the program file states no costs, and none is made up.")];
        return [new Sentence("What screening cost, and what it would cost otherwise, stands in the tables.")];
    }
}
