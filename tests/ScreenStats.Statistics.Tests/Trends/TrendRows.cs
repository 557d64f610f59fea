using System.Globalization;
using ScreenStats.Statistics.Trends;

namespace ScreenStats.Statistics.Tests.Trends;

/// <summary>Periods as they stand in reference tables: time:events/trials, separated by blanks.</summary>
internal static class TrendRows
{
    public static TimedCount[] Read(string text) => [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(part =>
    {
        var (at, over) = (part.IndexOf(':', StringComparison.Ordinal), part.IndexOf('/', StringComparison.Ordinal));
        return new TimedCount(Number(part[..at]), Number(part[(at + 1)..over]), Number(part[(over + 1)..]));
    })];

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
