using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>Which option gains most for how much infection: that one option no longer pays does not mean to stop.</summary>
internal static class LadderSentences
{
    /// <summary>Two places found by search that differ by a smaller share are one.</summary>
    private const double Same = 1e-6;

    public static Sentence? Of(WorthFindings findings)
    {
        if (findings.Ladder.IsEmpty) return null;
        List<WorthRung> ladder = [.. findings.Ladder];
        if (ladder is [{ IsNone: true }]) return new Sentence("No way of screening that was looked at gains more than none, however much infection there is.");
        if (ladder is [var only]) return new Sentence("However much infection there is, \"{0}\" gains most.", WorthWords.Name(only));
        var turn = findings.Turn("weekly-incidence");
        if (turn is not { BreakEven: { } at, Pays: WorthPays.Above or WorthPays.Between } || !(turn.OtherBreakEven is not { } other || other > at)) return Upward("With more infection step up rather than judge by one option: ", ladder);
        // The rung that the break-even lies on: what to do just below it.
        var place = ladder.FindLastIndex(rung => rung.From < at * (1 - Same));
        var below = ladder.Take(place + 1).Reverse().ToList();
        var figures = new List<FigureReference>();
        var text = below is [{ IsNone: true }] ? "Below that no screening gains most" : "Below that, step down rather than stop: " + string.Join(", ", below.Select((rung, index) => Down(rung, index, below.Count, figures)));
        var above = ladder.Skip(place + 1).ToList();
        if (above.Count > 0) text += "; with more infection " + List([.. above.Select((rung, index) => $"{Named(rung, figures)}{(index == 0 ? " gains most" : "")} from {Place(WorthWords.From(rung), figures)}")]);
        return new Sentence(text + ", all else as assumed.", [.. figures]);
    }

    private static Sentence Upward(string opening, List<WorthRung> ladder)
    {
        var figures = new List<FigureReference>();
        var parts = ladder.ConvertAll(rung => rung == ladder[0]
            ? $"{Named(rung, figures)} gains most up to {Place(WorthWords.To(rung), figures)} in 1,000 people a week"
            : $"{Named(rung, figures)} from {Place(WorthWords.From(rung), figures)}");
        return new Sentence(opening + List(parts) + ", all else as assumed.", [.. figures]);
    }

    private static string Down(WorthRung rung, int index, int count, List<FigureReference> figures)
    {
        if (rung.From == 0) return (count > 1 ? "and " : "") + $"below {Place(WorthWords.To(rung), figures)} {Named(rung, figures)}" + (count > 1 ? "" : " gains most");
        return $"{Named(rung, figures)}{(index == 0 ? " gains most" : "")} down to {Place(WorthWords.From(rung), figures)}";
    }

    private static string Named(WorthRung rung, List<FigureReference> figures) => rung.IsNone ? "no screening" : $"\"{Place(WorthWords.Name(rung), figures)}\"";

    private static string Place(FigureReference figure, List<FigureReference> figures)
    {
        figures.Add(figure);
        return FormattableString.Invariant($"{{{figures.Count - 1}}}");
    }

    private static string List(List<string> parts) => parts.Count == 1 ? parts[0] : string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1];
}
