using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Levels;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Accuracy;

/// <summary>Pictures of the accuracy here against what is stated. Left out where small counts are hidden: its limits rest on single people.</summary>
internal static class AccuracyFigures
{
    /// <summary>Sensitivity and specificity as estimated here, beside what is stated of each device; nothing where either is not known.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        if (findings.Disclosure is not null) return [];
        var found = findings.Accuracy;
        return
        [
            .. Of(findings, "sensitivity", found.Sensitivity, found.SensitivityLimit, found.SensitivityBounds, device => device.StatedSensitivity, near: false),
            .. Of(findings, "specificity", found.Specificity, found.SpecificityLimit, found.SpecificityBounds, device => device.StatedSpecificity, near: true),
        ];
    }

    private static IEnumerable<Chart> Of(Findings findings, string measure, EstimateFinding estimate, LimitFinding limit, BoundsFinding bounds, Func<DeviceFinding, StatedFigure?> read, bool near)
    {
        var stated = findings.Expected.Devices.Where(device => read(device) is not null)
            .Select(device => read(device) is { } figure ? new StatedRow(device.Device, figure.Value, figure.Lower, figure.Upper) { TakenAsExact = figure.TakenAsExact } : null!).ToImmutableArray();
        var here = new StatedRow("estimated here", estimate.Estimate, estimate.Estimate is null ? limit.Lower : estimate.Lower, estimate.Estimate is null ? null : estimate.Upper)
        {
            Bounds = bounds is { Lower: { } from, Upper: { } to } ? (from, to) : null,
        };
        if (stated.IsEmpty || (here.Lower ?? here.Estimate) is null && here.Bounds is null) yield break;
        yield return StatedChart.Of(
            new ChartFrame(
                "accuracy-" + measure,
                $"{char.ToUpperInvariant(measure[0])}{measure[1..]} here, and as stated of the devices",
                Caption(measure, here, estimate, limit, bounds) + Against(here, stated) + Beyond(measure, here, near ? StatedChart.Left(here, stated) : 0),
                Words(here) + " " + string.Join(" ", stated.Take(StatedChart.Most).Select(Words)),
                findings.Accuracy.Table.Id),
            here, stated, near);
    }

    private static Caption Caption(string measure, StatedRow here, EstimateFinding estimate, LimitFinding limit, BoundsFinding bounds)
    {
        var path = "accuracy." + measure;
        var name = $"{char.ToUpperInvariant(measure[0])}{measure[1..]}";
        if (estimate is { Estimate: not null, Lower: not null, Upper: not null })
        {
            return new Sentence(
                name + " was {0} here (limits {1} to {2}).", See.Share(path + ".estimate", estimate.Estimate), See.Share(path + ".lower", estimate.Lower), See.Share(path + ".upper", estimate.Upper));
        }

        if (here.Estimate is null && limit.Lower is not null) return new Sentence(name + " was at least {0} here: too little was audited, or none missed, for more.", See.Share(path + "Limit.lower", limit.Lower));
        return new Sentence(
            "Without audits of negative runs nothing but bounds is known of the " + measure + " here: {0} to {1}.", See.Share(path + "Bounds.lower", bounds.Lower), See.Share(path + "Bounds.upper", bounds.Upper));
    }

    // Limits against limits: what does not overlap contradicts.
    private static Caption Against(StatedRow here, ImmutableArray<StatedRow> stated)
    {
        var (low, high) = here.Lower is { } lower ? (lower, here.Upper ?? 1) : (here.Bounds!.Value.Lower, here.Bounds.Value.Upper);
        var (above, below) = (stated.Count(row => row.Lower > high), stated.Count(row => row.Upper < low));
        if (above + below == 0) return "That contradicts no stated value: all limits overlap.";
        return new Sentence(
            "Of {0} stated " + (stated.Length == 1 ? "value" : "values") + ", {1} with its limits lies wholly above that, {2} wholly below.", Charts.Model.Caption.Drawn(stated.Length), Charts.Model.Caption.Drawn(above), Charts.Model.Caption.Drawn(below))
            + "The people tested here, or how the test was done, may differ from those behind the stated value.";
    }

    private static Caption Beyond(string measure, StatedRow here, double left) => here.Bounds is { Lower: var lower } && lower < left
        ? new Sentence("The thin line goes on beyond the left edge, down to {0}.", See.Share($"accuracy.{measure}Bounds.lower", lower)) : "";

    private static string Words(StatedRow row) => $"{ChartText.Name(row.Name)}: " + (row switch
    {
        { Estimate: { } value, TakenAsExact: true } => $"{Print(value)}, stated without limits",
        { Estimate: { } value, Lower: { } lower, Upper: { } upper } => $"{Print(value)}, limits {Print(lower)} to {Print(upper)}",
        { Lower: { } least } => $"at least {Print(least)}",
        _ => "no estimate",
    }) + (row.Bounds is { } bounds ? $"; bounds {Print(bounds.Lower)} to {Print(bounds.Upper)}." : ".");

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
}
