using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Words;

/// <summary>References to the figures of this analysis, by their paths in findings.json.</summary>
internal sealed class CadenceFigures(CadenceFindings findings)
{
    private const double FarFromFigure = 0.2;

    public FigureReference People => Figure.Count("cadence.people", findings.People);

    /// <summary>"person" or "people".</summary>
    public string PeopleWord => findings.People == 1 ? "person" : "people";

    /// <summary>"day" or "days".</summary>
    public string DaysWord => findings.Days == 1 ? "day" : "days";

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
        Figure.Number(path + ".estimate", figure.Estimate, unit, figure.EstimateUndefined), Figure.Number(path + ".lower", figure.Lower, UnitOf(figure.Lower, figure, unit), figure.EstimateUndefined),
        Figure.Number(path + ".upper", figure.Upper, UnitOf(figure.Upper, figure, unit), figure.EstimateUndefined),
    ];

    // A limit far from its figure has an error by the draws, a part of that distance: it is not printed to more digits than that.
    private static Unit UnitOf(double? limit, EstimateFinding figure, Unit unit) =>
        unit == Unit.Ratio && limit is { } end && figure.Estimate is { } estimate && Math.Abs(end - estimate) > FarFromFigure * Math.Abs(end) ? Unit.DrawnLimit : unit;

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
