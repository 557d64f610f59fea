using ScreenStats.Statistics.Tests.Regression.Rates;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Tests.Trends.Growth;

/// <summary>Series as they stand in reference tables (events/size:time), and as they are drawn for properties.</summary>
internal static class SeriesRows
{
    public static readonly Gen<CountPoint[]> Drawn = Gen.Select(Gen.Int[2, 14], Gen.Int[5, 900].Array[14], Gen.Double[0, 1].Array[14], Gen.Double[0.02, 0.5])
        .Select((count, sizes, parts, most) => (CountPoint[])[.. Enumerable.Range(0, count).Select(i => new CountPoint(i, Math.Floor(parts[i] * most * sizes[i]), sizes[i]))]);

    public static readonly Gen<SeriesOptions> Options = Gen.Select(Gen.Int[0, 2], Gen.Int[0, 3], Gen.Bool)
        .Select((scale, limits, student) => new SeriesOptions { Scale = (TrendScale)scale, Limits = (TrendLimits)limits, Student = student });

    public static CountPoint[] Read(string text) => [.. text.Split(' ').Select(part =>
    {
        var fields = part.Split('/', ':');
        return new CountPoint(RateRows.Number(fields[2]), RateRows.Number(fields[0]), RateRows.Number(fields[1]));
    })];

    public static TrendScale Scale(ReferenceRow row) => row.Text("scale") switch { "odds" => TrendScale.Odds, "share" => TrendScale.Share, _ => TrendScale.Events };

    public static TrendLimits Limits(ReferenceRow row) =>
        row.Text("limits") switch { "plain" => TrendLimits.Plain, "quasi" => TrendLimits.Quasi, "robust" => TrendLimits.Robust, _ => TrendLimits.ProfileLikelihood };
}
