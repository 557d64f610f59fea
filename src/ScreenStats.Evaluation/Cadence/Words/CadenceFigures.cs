using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>References to the figures of this analysis, by their paths in findings.json.</summary>
internal sealed class CadenceFigures(CadenceFindings findings)
{
    public FigureReference People => Figure.Count("cadence.people", findings.People);

    public FigureReference Days => Figure.Count("cadence.days", findings.Days);

    public FigureReference Confidence => Shared.Say.Confidence("cadence.confidence", findings.Confidence);

    public FigureReference Worthwhile => Figure.Number("cadence.worthwhile", findings.Worthwhile, Unit.Days, findings.WorthwhileUndefined);

    public static FigureReference Name(CadenceOptionFinding option) => Figure.Name(FigurePath.Row("cadence.options", option.Option) + ".option", option.Option);

    public static FigureReference EveryDays(CadenceOptionFinding option) => Figure.Number(FigurePath.Row("cadence.options", option.Option) + ".everyDays", option.EveryDays, Unit.Days, option.EveryDaysUndefined);

    /// <summary>A figure of an option with its limits.</summary>
    public FigureReference[] Of(CadenceOptionFinding option, CadenceMeasure measure, CadenceBasis? basis = null)
    {
        var outcome = findings.Outcome(option.Option, measure, basis)!;
        return Of(FigurePath.Row("cadence.outcomes", outcome.Key) + ".figure", outcome.Figure, UnitOf(measure));
    }

    /// <summary>A figure with its limits.</summary>
    public static FigureReference[] Of(string path, EstimateFinding figure, Unit unit) =>
    [
        Figure.Number(path + ".estimate", figure.Estimate, unit, figure.EstimateUndefined), Figure.Number(path + ".lower", figure.Lower, unit, figure.EstimateUndefined),
        Figure.Number(path + ".upper", figure.Upper, unit, figure.EstimateUndefined),
    ];

    /// <summary>Whether a figure of an option is known, with limits.</summary>
    public bool Knows(CadenceOptionFinding option, CadenceMeasure measure, CadenceBasis? basis = null) =>
        findings.Outcome(option.Option, measure, basis) is { Figure: { Estimate: not null, Lower: not null } };

    public static Unit UnitOf(CadenceMeasure measure) => measure switch
    {
        CadenceMeasure.Screens => Unit.Count,
        CadenceMeasure.ShareRemoved or CadenceMeasure.CaughtBeforeSpread or CadenceMeasure.Detection or CadenceMeasure.AnyFalseAlarm or CadenceMeasure.PredictiveValue => Unit.Proportion,
        _ => Unit.Ratio,
    };
}
