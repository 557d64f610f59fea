using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Words;

/// <summary>References to the figures of this analysis, by their paths in findings.json.</summary>
internal sealed class WorthWords(WorthFindings findings)
{
    public FigureReference Currency => Figure.Name("worth.currency", findings.Currency);

    public FigureReference Days => Figure.Count("worth.days", findings.Days);

    public FigureReference People => Figure.Count("worth.people", findings.People);

    public FigureReference Confidence => Shared.Say.Confidence("worth.confidence", findings.Confidence);

    public FigureReference Value => Figure.Number("worth.value", findings.Value, Unit.Ratio, findings.ValueUndefined);

    public FigureReference PaysShare => Figure.Number("worth.paysShare", findings.PaysShare, Unit.Proportion, findings.PaysShareUndefined);

    public FigureReference[] PaysShareAtEnds =>
    [
        Figure.Number("worth.valueLower", findings.ValueLower, Unit.Ratio), Figure.Number("worth.paysShareAtLower", findings.PaysShareAtLower, Unit.Proportion),
        Figure.Number("worth.valueUpper", findings.ValueUpper, Unit.Ratio), Figure.Number("worth.paysShareAtUpper", findings.PaysShareAtUpper, Unit.Proportion),
    ];

    public string One => WorthNames.One(findings.Effect);

    /// <summary>The name of an option, and what follows a positive in plain words after it.</summary>
    public static FigureReference Name(WorthOption option) => Figure.Name(FigurePath.Row("worth.options", option.Key) + ".option", option.Option);

    public static string After(WorthOption option) => WorthNames.InWords(option.Confirmation);

    /// <summary>What follows a positive, where that differs from what follows it under the option judged.</summary>
    public string Otherwise(WorthConfirmation? confirmation) =>
        confirmation is not { } other || other == WorthConfirmation.NotNeeded || other == findings.Judged?.Confirmation ? "" : WorthNames.InWords(other);

    public static FigureReference[] NetBenefit(WorthOption option) => Of(FigurePath.Row("worth.options", option.Key) + ".netBenefit", option.NetBenefit);

    public static FigureReference MeanNetBenefit(WorthOption option) =>
        Figure.Number(FigurePath.Row("worth.options", option.Key) + ".meanNetBenefit", option.MeanNetBenefit, Unit.Ratio, option.MeanNetBenefitUndefined);

    public static FigureReference BestShare(WorthOption option) =>
        Figure.Number(FigurePath.Row("worth.options", option.Key) + ".bestShare", option.BestShare, Unit.Proportion, option.BestShareUndefined);

    public static FigureReference[] Effect(WorthOption option) => Of(FigurePath.Row("worth.options", option.Key) + ".effect", option.Effect);

    public static FigureReference[] Cost(WorthOption option) => Of(FigurePath.Row("worth.options", option.Key) + ".cost", option.Cost);

    public static FigureReference[] Of(WorthFigure figure, Unit unit = Unit.Ratio) => Of(FigurePath.Row("worth.figures", figure.Key) + ".figure", figure.Figure, unit);

    public static FigureReference BreakEven(WorthTurn turn, Unit unit = Unit.Ratio) => Figure.Number(FigurePath.Row(turn.Option.Length == 0 ? "worth.turns" : "worth.optionTurns", turn.Key) + ".breakEven", turn.BreakEven, unit, turn.BreakEvenUndefined);

    public static FigureReference OtherBreakEven(WorthTurn turn) => Figure.Number(FigurePath.Row("worth.turns", turn.Key) + ".otherBreakEven", turn.OtherBreakEven, Unit.Ratio, "not known");

    public static FigureReference Name(WorthRung rung) => Figure.Name(FigurePath.Row("worth.ladder", rung.Key) + ".option", rung.Option);

    public static FigureReference From(WorthRung rung) => Figure.Number(FigurePath.Row("worth.ladder", rung.Key) + ".from", rung.From, Unit.Ratio);

    public static FigureReference To(WorthRung rung) => Figure.Number(FigurePath.Row("worth.ladder", rung.Key) + ".to", rung.To, Unit.Ratio, "none");

    public static FigureReference[] Present(WorthTurn turn, Unit unit = Unit.Ratio)
    {
        var path = FigurePath.Row(turn.Option.Length == 0 ? "worth.turns" : "worth.optionTurns", turn.Key);
        return
        [
            Figure.Number(path + ".present", turn.Present, unit, turn.PresentUndefined), Figure.Number(path + ".lower", turn.Lower, unit, turn.PresentUndefined),
            Figure.Number(path + ".upper", turn.Upper, unit, turn.PresentUndefined),
        ];
    }

    /// <summary>Whether the limits of a figure read differently: an interval from 4.79 to 4.79 tells nothing.</summary>
    /// <param name="figure">A figure, its lower and its upper limit.</param>
    public static bool Apart(FigureReference[] figure) => Rounding.Print(figure[1].Value, figure[1].Unit) != Rounding.Print(figure[2].Value, figure[2].Unit);

    private static FigureReference[] Of(string path, EstimateFinding figure, Unit unit = Unit.Ratio) =>
    [
        Figure.Number(path + ".estimate", figure.Estimate, unit, figure.EstimateUndefined), Figure.Number(path + ".lower", figure.Lower, unit, figure.EstimateUndefined),
        Figure.Number(path + ".upper", figure.Upper, unit, figure.EstimateUndefined),
    ];
}
