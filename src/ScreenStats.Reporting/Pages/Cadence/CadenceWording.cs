using System.Globalization;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Pages.Cadence;

/// <summary>Words and figures of how often to screen, as they are read on pages and pictures.</summary>
internal static class CadenceWording
{
    private const double Many = 100_000;

    /// <summary>A heading of a measure.</summary>
    public static string Heading(CadenceMeasure measure) => measure switch
    {
        CadenceMeasure.InfectiousDaysRemoved => "Infectious days removed",
        CadenceMeasure.ShareRemoved => "Share of infectious days",
        CadenceMeasure.CaughtBeforeSpread => "Caught before they spread",
        CadenceMeasure.Detection => "Infections found",
        CadenceMeasure.DaysOfAverted => "Of these, of infections averted",
        CadenceMeasure.InfectionsAverted => "Infections averted",
        CadenceMeasure.OutbreaksAvoided => "Outbreaks avoided",
        CadenceMeasure.Screens => "Screens",
        CadenceMeasure.FalseAlarms => "False alarms",
        CadenceMeasure.AnyFalseAlarm => "A person's chance of a false alarm",
        CadenceMeasure.TruePositives => "Infected people found",
        CadenceMeasure.PredictiveValue => "Positives that are infected",
        CadenceMeasure.DaysAwayAdded => "Days of isolation added",
        CadenceMeasure.Inconclusive => "Inconclusive screens",
        CadenceMeasure.InconclusiveTests => "Confirmatory tests of these",
        CadenceMeasure.InconclusiveRepeats => "Repeats of these",
        _ => "Working days lost",
    };

    /// <summary>Whether a measure is a share or a chance.</summary>
    public static bool IsShare(CadenceMeasure measure) =>
        measure is CadenceMeasure.ShareRemoved or CadenceMeasure.CaughtBeforeSpread or CadenceMeasure.Detection or CadenceMeasure.AnyFalseAlarm or CadenceMeasure.PredictiveValue;

    /// <summary>The name of an option with what is said of it.</summary>
    public static string Option(CadenceOptionFinding option)
    {
        if (option.IsAsDone) return "as done, gaps as they were";
        return option.Option + (option is { IsPlanned: true, IsChosen: true } ? " (planned and chosen)" : option.IsPlanned ? " (planned)" : option.IsChosen ? " (chosen)" : "");
    }

    /// <summary>What is taken of infections brought in, for the end of a caption.</summary>
    public static string Basis(CadenceBasis basis) => basis switch
    {
        CadenceBasis.AllBroughtIn => "; were all infections brought in",
        CadenceBasis.AllInside => "; were all infections caught inside",
        _ => "",
    };

    /// <summary>What is compared of plan and practice.</summary>
    public static string Practice(string measure) => measure switch
    {
        "days-between-screens" => "Days between a person's screens",
        "screens" => "Screens in the data",
        "followed-up-positives" => "Positives followed up to a result",
        "detection" => "Infections found",
        "share-removed" => "Share of infectious days removed",
        "infectious-days-removed" => "Infectious days removed",
        _ => CadenceViews.Capital(measure.Replace('-', ' ')),
    };

    /// <summary>Where an assumption comes from.</summary>
    public static string Origin(CadenceOrigin origin) => origin switch
    {
        CadenceOrigin.Stated => "stated",
        CadenceOrigin.Data => "taken from your data",
        _ => "not known",
    };

    /// <summary>A figure with its unit.</summary>
    /// <param name="value">The figure.</param>
    /// <param name="unit">Its unit, as the tables name it.</param>
    public static string Value(double value, string unit) => unit switch
    {
        "share" => Rounding.Print(Cell.Number(value), Unit.Proportion),
        "per person-day" => Plain(value * Many) + " per 100,000 person-days",
        "days since infection" => Plain(value) + (value == 1 ? " day" : " days"),
        "days" when value == 1 => "1 day",
        "days" or "infections" or "people" or "screens" or "positive runs" or "days per 1,000 screens" => $"{Plain(value)} {unit}",
        "log10 of copies" => $"{Plain(value)} log10 copies",
        _ => Plain(value),
    };

    /// <summary>Both ends of a range, without the unit but for per cent.</summary>
    public static string Range(double? lower, double? upper, string unit) => (lower, upper) is ({ } from, { } to) ? $"{Short(from, unit).Replace(" %", "", StringComparison.Ordinal)} to {Short(to, unit)}" : "";

    /// <summary>A figure without its unit, but for per cent.</summary>
    public static string Short(double value, string unit) => unit switch
    {
        "share" => Rounding.Print(Cell.Number(value), Unit.Proportion),
        "per person-day" => Plain(value * Many),
        _ => Plain(value),
    };

    /// <summary>An estimate with its limits.</summary>
    public static string Figure(EstimateFinding figure, string unit) => figure.Estimate is not { } estimate ? figure.EstimateUndefined ?? "not known"
        : Value(estimate, unit) + (figure is { Lower: { } lower, Upper: { } upper } && lower < upper ? $" ({Range(lower, upper, unit)})" : "");

    /// <summary>A number with three significant digits at most, and no noughts at its end.</summary>
    public static string Plain(double value) => Math.Abs(value) switch
    {
        0 => "0",
        < 0.001 => value.ToString("0.00E+0", CultureInfo.InvariantCulture),
        < 1 => value.ToString("0.###", CultureInfo.InvariantCulture),
        < 10 => value.ToString("0.##", CultureInfo.InvariantCulture),
        < 100 => value.ToString("0.#", CultureInfo.InvariantCulture),
        _ => value.ToString("#,0", CultureInfo.InvariantCulture),
    };

    /// <summary>Screens of a person in 30 days; null where nobody is screened at all or the screens are not known.</summary>
    public static double? ScreensInThirtyDays(CadenceFindings found, CadenceOptionFinding option) =>
        found.People > 0 && found.Outcome(option.Option, CadenceMeasure.Screens)?.Figure.Estimate is { } screens ? screens / found.People / found.Days * 30 : null;
}
