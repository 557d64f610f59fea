using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Expected;

/// <summary>Pictures of expected predictive values.</summary>
internal static class ExpectedFigures
{
    /// <summary>More devices than this are not drawn; the table has all.</summary>
    public const int MostDevices = 4;

    /// <summary>A curve of predictive values against prevalence for each device with a stated accuracy.</summary>
    public static ImmutableArray<Chart> Of(Findings findings) =>
    [
        .. findings.Expected.Devices.Where(device => device.Curve.Length >= 2).Take(MostDevices).Select((device, index) => Of(device, index, findings.Expected.CurveTable.Id)),
    ];

    private static Chart Of(DeviceFinding device, int index, string table)
    {
        var lines = ImmutableArray.CreateBuilder<CurveLine>();
        Add(lines, "a positive is right", Tone.Main, device.Curve, point => (point.Positive, point.PositiveLower, point.PositiveUpper));
        Add(lines, "a negative is right", Tone.Second, device.Curve, point => (point.Negative, point.NegativeLower, point.NegativeUpper));
        var places = device.Places.Where(place => place.Prevalence > 0).Select(place => (Short(place), place.Prevalence)).ToImmutableArray();
        var name = ChartText.Name(device.Device, 40);
        return CurveChart.Of(
            new ChartFrame(
                string.Create(CultureInfo.InvariantCulture, $"predictive-values-{index + 1}"),
                $"Expected predictive values of {name}",
                $"A positive is worth little where few are infected. How often a positive and a negative result of {name} would be right, by its stated accuracy, against the share infected.",
                string.Join(" ", device.Places.Select(place => $"{place.Label}, {Print(place.Prevalence)}: a positive is right in {Print(place.Positive.Estimate)}, a negative in {Print(place.Negative.Estimate)}."))
                + " The curve of positives rises with the share infected, that of negatives falls.",
                table),
            lines.ToImmutable(), places);
    }

    private static void Add(
        ImmutableArray<CurveLine>.Builder lines, string name, Tone tone, ImmutableArray<CurvePoint> curve, Func<CurvePoint, (double?, double?, double?)> read)
    {
        var points = ImmutableArray.CreateBuilder<(double At, double Value, double Lower, double Upper)>();
        foreach (var point in curve.Where(point => point.Prevalence > 0))
        {
            var (value, lower, upper) = read(point);
            if (value is { } some) points.Add((point.Prevalence, some, lower ?? some, upper ?? some));
        }

        if (points.Count >= 2) lines.Add(new CurveLine(name, tone, points.ToImmutable()));
    }

    /// <summary>Words that have room beside a line; the table and the description have the whole.</summary>
    private static string Short(ProgramPlace place) => place.Id switch
    {
        "external" => "external prevalence",
        "positivity" => "behind the positivity",
        _ => ChartText.Name(place.Label),
    };

    private static string Print(double? value) => Rounding.Print(Cell.NumberOr(value, "undefined"), Unit.Proportion);
}
