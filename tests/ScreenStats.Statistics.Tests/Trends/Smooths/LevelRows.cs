using System.Globalization;
using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Trends.Smooths;

namespace ScreenStats.Statistics.Tests.Trends.Smooths;

/// <summary>Periods as they stand in reference tables, and as they are drawn for properties.</summary>
internal static class LevelRows
{
    /// <summary>Weeks with gaps, some without tests.</summary>
    public static readonly Gen<PeriodCount[]> Drawn = Gen.Select(Gen.Int[0, 60], Gen.Double[0, 1], Gen.Int[1, 3]).Array[2, 14].Select(weeks =>
    {
        long at = 0;
        return weeks.Select(week => new PeriodCount(at += week.Item3, Math.Floor(week.Item2 * week.Item2 * week.Item1), week.Item1)).ToArray();
    });

    public static PeriodCount[] Periods(ReferenceRow row) => [.. row.Text("periods").Split(' ').Select(part =>
    {
        var figures = part.Split(':', '/');
        return new PeriodCount(long.Parse(figures[0], CultureInfo.InvariantCulture), Number(figures[1]), Number(figures[2]));
    })];

    public static LevelStart Start(ReferenceRow row)
    {
        var parts = row.Text("start").Split(':', ',');
        return parts[0] switch
        {
            "normal" => LevelStart.Normal(Number(parts[1]), Number(parts[2])),
            "beta" => LevelStart.Beta(Number(parts[1]), Number(parts[2])),
            _ => LevelStart.Diffuse,
        };
    }

    /// <summary>The figures that a row lists: of all points, or of those whose places it names.</summary>
    public static IEnumerable<string?> Mismatches<T>(ReferenceRow row, string column, IReadOnlyList<T> points, Func<T, double> figure) =>
        GroupRows.Mismatches(row, column, (row.Has("at") ? row.Numbers("at").Select(place => points[(int)place - 1]) : points).Select(point => (double?)figure(point)));

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
