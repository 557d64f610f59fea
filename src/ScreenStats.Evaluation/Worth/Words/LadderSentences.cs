using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>Which option gains most for how much infection: that one option no longer pays does not mean to stop.</summary>
internal static class LadderSentences
{
    public static Sentence? Of(WorthFindings findings)
    {
        if (findings.Ladder.IsEmpty) return null;
        List<WorthRung> ladder = [.. findings.Ladder];
        if (ladder is [{ IsNone: true }]) return new Sentence("No way of screening that was looked at gains more than none, however much infection there is.");
        if (ladder is [var only]) return new Sentence("However much infection there is, \"{0}\" gains most.", WorthWords.Name(only));
        var (words, figures) = (new WorthWords(findings), new List<FigureReference>());
        var parts = ladder.ConvertAll(rung => rung switch
        {
            { To: null } => $"from {Place(WorthWords.From(rung), figures)} on {Named(words, rung, figures)}",
            { From: 0 } => $"below {Place(WorthWords.To(rung), figures)} in 1,000 people a week {Named(words, rung, figures)}",
            _ => $"from {Place(WorthWords.From(rung), figures)} {Named(words, rung, figures)}",
        });
        return new Sentence("To pay is not to gain most: all else as assumed, " + List(parts) + " gains most, so where one way no longer pays, step down before you stop.", [.. figures]);
    }

    private static string Named(WorthWords words, WorthRung rung, List<FigureReference> figures) => rung.IsNone ? "no screening" : $"\"{Place(WorthWords.Name(rung), figures)}\"{words.Otherwise(rung.Confirmation)}";

    private static string Place(FigureReference figure, List<FigureReference> figures)
    {
        figures.Add(figure);
        return FormattableString.Invariant($"{{{figures.Count - 1}}}");
    }

    private static string List(List<string> parts) => parts.Count == 1 ? parts[0] : string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1];
}
