namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>Words of this analysis in tables.</summary>
internal static class CadenceNames
{
    public static string Of(CadenceMeasure measure) => measure switch
    {
        CadenceMeasure.InfectiousDaysRemoved => "infectious-days-removed",
        CadenceMeasure.ShareRemoved => "share-removed",
        CadenceMeasure.CaughtBeforeSpread => "caught-before-spread",
        CadenceMeasure.Detection => "detection",
        CadenceMeasure.InfectionsAverted => "infections-averted",
        CadenceMeasure.OutbreaksAvoided => "outbreaks-avoided",
        CadenceMeasure.Screens => "screens",
        CadenceMeasure.FalseAlarms => "false-alarms",
        CadenceMeasure.AnyFalseAlarm => "any-false-alarm",
        CadenceMeasure.TruePositives => "true-positives",
        CadenceMeasure.PredictiveValue => "predictive-value",
        CadenceMeasure.DaysLost => "days-lost",
        CadenceMeasure.DaysOfAverted => "days-of-averted",
        CadenceMeasure.DaysAwayAdded => "days-away-added",
        CadenceMeasure.Inconclusive => "inconclusive",
        CadenceMeasure.InconclusiveTests => "inconclusive-tests",
        CadenceMeasure.InconclusiveRepeats => "inconclusive-repeats",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure of this analysis."),
    };

    public static string Of(CadenceBasis basis) => basis switch
    {
        CadenceBasis.Either => "either",
        CadenceBasis.AsStated => "as-stated",
        CadenceBasis.AllBroughtIn => "all-brought-in",
        CadenceBasis.AllInside => "all-inside",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a basis of this analysis."),
    };

    public static string Of(CadenceOrigin origin) => origin switch
    {
        CadenceOrigin.Stated => "stated",
        CadenceOrigin.Data => "taken from your data",
        CadenceOrigin.NotKnown => "not known",
        _ => throw new ArgumentOutOfRangeException(nameof(origin), origin, "Not an origin of an assumption."),
    };
}
