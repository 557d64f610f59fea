using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>How often to screen, in words.</summary>
internal static class CadenceSentences
{
    public static ImmutableArray<Sentence> Of(CadenceFindings findings)
    {
        if (findings.People == 0) return [new Sentence("Nobody was tested, so there is nothing to say about how often to screen.")];
        return [new Sentence("What each way of screening gives and costs is for {0} people over {1} days.", Figure.Count("cadence.people", findings.People), Figure.Count("cadence.days", findings.Days))];
    }
}
