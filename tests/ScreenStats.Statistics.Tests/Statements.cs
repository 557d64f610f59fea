using System.Globalization;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Statistics.Tests;

/// <summary>Reads an accuracy of a reference table: <c>61/97</c> are counts, <c>0.8</c> is exact.</summary>
internal static class Statements
{
    public static AccuracyStatement Read(string text)
    {
        var parts = text.Split('/');
        return parts.Length == 2
            ? AccuracyStatement.FromCounts(long.Parse(parts[0], CultureInfo.InvariantCulture), long.Parse(parts[1], CultureInfo.InvariantCulture))
            : AccuracyStatement.Exact(double.Parse(text, CultureInfo.InvariantCulture));
    }
}
