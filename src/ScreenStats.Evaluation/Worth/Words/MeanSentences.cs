using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>Why the mean over the draws lies far from the central figure, where it does.</summary>
internal static class MeanSentences
{
    /// <summary>So much of the way from the central figure to the nearer limit is far.</summary>
    private const double Far = 0.5;

    public static Sentence? Of(WorthFindings findings, WorthOption judged, double centre)
    {
        if (judged.MeanNetBenefit is not { } mean || judged.NetBenefit is not { Lower: { } lower, Upper: { } upper }) return null;
        if (mean > 0 == centre > 0 && Math.Abs(mean - centre) <= Far * Math.Min(centre - lower, upper - centre)) return null;
        var words = new WorthWords(findings);
        FigureReference[] figures = [WorthWords.MeanNetBenefit(judged), words.Currency, WorthWords.NetBenefit(judged)[0]];
        const string Opening = "Over the draws its net benefit is {0} {1} on average, far from the {2} at the central figures: ";
        if (findings is not { GrowingShare: > 0 and var share, MeanWithoutGrowing: { } without }) return new Sentence(Opening + "the draws lie unevenly around these.", [.. figures]);
        return new Sentence(
            Opening + "in {3} of the draws one case infects at least one other without screening, so that infection grows by itself and much is averted; without these draws the average is {4}.",
            [.. figures, Figure.Number("worth.growingShare", share, Unit.Proportion), Figure.Number("worth.meanWithoutGrowing", without, Unit.Ratio)]);
    }
}
