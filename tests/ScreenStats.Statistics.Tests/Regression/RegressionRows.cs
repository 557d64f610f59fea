using System.Globalization;
using ScreenStats.Statistics.Regression;

namespace ScreenStats.Statistics.Tests.Regression;

/// <summary>Rows of regressions as they stand in reference tables (events/trials:term;term@group), and as they are drawn for properties.</summary>
internal static class RegressionRows
{
    /// <summary>Sites with a few periods each, of very different size, some without any event.</summary>
    public static readonly Gen<BinomialRow[]> Drawn = Gen.Select(Gen.Int[2, 9], Gen.Int[1, 3], Gen.Double[0, 1].Array[60], Gen.Int[4, 400].Array[30]).Select((groups, periods, parts, trials) =>
        (BinomialRow[])[.. Enumerable.Range(0, groups * periods).Select(i =>
            new BinomialRow((long)(parts[i] * parts[30 + (i / periods)] * 0.6 * trials[i]), trials[i], Periods(i % periods, periods), i / periods))]);

    public static BinomialRow[] Read(ReferenceRow row) => [.. row.Text("rows").Split(' ').Select(text =>
    {
        var parts = text.Split('/', ':', '@');
        double[] terms = [.. parts[2].Split(';', StringSplitOptions.RemoveEmptyEntries).Select(term => double.Parse(term, CultureInfo.InvariantCulture))];
        return new BinomialRow(long.Parse(parts[0], CultureInfo.InvariantCulture), long.Parse(parts[1], CultureInfo.InvariantCulture), terms, int.Parse(parts[3], CultureInfo.InvariantCulture));
    })];

    public static bool Close(double a, double b, double width = 1e-6) => Math.Abs(a - b) <= width * (1 + Math.Abs(a));

    public static bool Close(IReadOnlyList<double> a, IReadOnlyList<double> b, double width = 1e-6) => a.Count == b.Count && a.Zip(b).All(pair => Close(pair.First, pair.Second, width));

    private static double[] Periods(int period, int periods) => [.. Enumerable.Range(1, periods - 1).Select(other => other == period ? 1.0 : 0.0)];
}
