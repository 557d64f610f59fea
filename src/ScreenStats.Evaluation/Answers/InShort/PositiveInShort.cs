using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Shared;

namespace ScreenStats.Evaluation.Answers.InShort;

/// <summary>What a positive is worth, in one sentence.</summary>
internal static class PositiveInShort
{
    /// <summary>There is at least one positive run with a conclusion.</summary>
    public static Sentence Of(PredictiveValueFindings findings)
    {
        const string Path = "predictiveValue.observed";
        const string Without = "predictiveValue.withoutFlaggedLots.estimate";
        var observed = findings.Observed;
        var figures = ImmutableArray.Create(
            Figure.Count(Path + ".trials", observed.Trials), Figure.Count(Path + ".events", observed.Events), Say.Share(Path + ".estimate", observed.Estimate),
            Say.Confidence(Path + ".confidence", observed.Confidence), Say.Share(Path + ".widenedLower", observed.WidenedLower), Say.Share(Path + ".widenedUpper", observed.WidenedUpper));
        string Add(FigureReference figure)
        {
            figures = figures.Add(figure);
            return FormattableString.Invariant($"{{{figures.Length - 1}}}");
        }

        var lots = findings.FlaggedLots;
        var without = findings.WithoutFlaggedLots.Estimate is not { } rest || lots.IsEmpty ? ""
            : lots.Length == 1 ? $"; {Add(Say.Share(Without, rest))} without flagged lot {Add(Figure.Name(FigurePath.Row("predictiveValue.flaggedLots", lots[0]), lots[0]))}"
            : $"; {Add(Say.Share(Without, rest))} without flagged lots";
        var sites = observed.FewSites is { } few ? $"these {Add(Figure.Count(Path + ".fewSites", few))} sites" : "sites";
        return new Sentence(
            "Of {0} positive screens with a conclusive confirmatory result {1} " + Figure.Plural(observed.Events, "was", "were") + " real, {2} ({3} interval {4} to {5}" + without + ")" + ShareWords.Few(observed)
            + $", for the people, {sites} and weeks of these data and as far as the confirmatory test is right.",
            [.. figures]);
    }
}
