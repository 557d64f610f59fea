using System.Globalization;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Monitoring.MovingAverages;
using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Tests.Monitoring.Charts;

/// <summary>Reads the charts of the reference tables, and draws some.</summary>
internal static class ChartRows
{
    /// <summary>Subgroups with one number of trials for all, or one for each.</summary>
    public static Gen<Subgroup[]> Any { get; } =
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.001, 0.999]).SelectMany((size, rate) => Gen.Select(Gen.Long[0, (long)Math.Pow(10, size)], Gen.Double[0, 1])
            .Select((trials, luck) => new Subgroup((long)Math.Min(trials, Math.Floor(trials * rate * 2 * luck)), trials)).Array[2, 30]);

    public static IReadOnlyList<Subgroup> Subgroups(ReferenceRow row)
    {
        var (events, trials) = (row.Numbers("events"), row.Numbers("trials"));
        return [.. events.Select((x, i) => new Subgroup((long)x, (long)(trials.Count == 1 ? trials[0] : trials[i])))];
    }

    public static double Or(ReferenceRow row, string column, double otherwise) => row.Has(column) ? row.Number(column) : otherwise;

    public static double? Optional(ReferenceRow row, string column) => row.Has(column) ? row.Number(column) : null;

    public static ControlChart Chart(ReferenceRow row) => row.Text("method") switch
    {
        "p-exact" => ProportionChart.Exact(Subgroups(row), Optional(row, "centre"), Or(row, "tail", 0.00135)),
        "p-three-sigma" => ProportionChart.ThreeSigma(Subgroups(row), Optional(row, "centre")),
        "p-regression" => ProportionChart.Regression(Subgroups(row), Optional(row, "centre")),
        "p-widened" => OverdispersedChart.Of(Subgroups(row), Optional(row, "centre"), Or(row, "divisor", OverdispersedChart.PrintedDivisor)),
        "p-average" => MovingAverageChart.Proportions(Subgroups(row), Optional(row, "centre"), Or(row, "weight", 0.2), Or(row, "width", 2.962)),
        "average-steady" or "average" => MovingAverageChart.Values(
            row.Numbers("values"), row.Number("centre"), row.Number("deviation"), row.Number("weight"), row.Number("width"), row.Text("method") == "average-steady"),
        "c-three-sigma" => CountChart.ThreeSigma([.. row.Numbers("events").Select(x => (long)x)], Optional(row, "centre")),
        "c-exact" => CountChart.Exact([.. row.Numbers("events").Select(x => (long)x)], Optional(row, "centre"), Or(row, "tail", 0.00135)),
        var other => throw new ArgumentException($"No chart is called {other}.", nameof(row)),
    };

    /// <summary>Positions, from 1, of the points outside the limits; <c>none</c>.</summary>
    public static string Outside(ControlChart chart)
    {
        var outside = chart.Signals.Where(signal => signal.Rule == RunRule.OutsideLimits).Select(signal => (signal.Index + 1).ToString(CultureInfo.InvariantCulture));
        var text = string.Join(' ', outside);
        return text.Length == 0 ? "none" : text;
    }

    public static string? OutsideMismatch(ReferenceRow row, ControlChart chart) =>
        !row.Has("outside") || row.Text("outside") == Outside(chart) ? null : $"{row}: outside should be {row.Text("outside")}, is {Outside(chart)}";
}
