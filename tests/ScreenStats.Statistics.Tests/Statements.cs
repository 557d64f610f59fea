using System.Globalization;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Tests;

/// <summary>Reads an accuracy of a reference table: <c>61/97</c> are counts, <c>0.73[0.65,0.80]</c> is a value with its 95 % interval, <c>0.8</c> is exact.</summary>
internal static class Statements
{
    public static AccuracyStatement Read(string text)
    {
        if (text.Contains('[', StringComparison.Ordinal))
        {
            var figures = text.TrimEnd(']').Split('[', ',').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray();
            return AccuracyStatement.FromInterval(figures[0], figures[1], figures[2]);
        }

        var parts = text.Split('/');
        return parts.Length == 2
            ? AccuracyStatement.FromCounts(long.Parse(parts[0], CultureInfo.InvariantCulture), long.Parse(parts[1], CultureInfo.InvariantCulture))
            : AccuracyStatement.Exact(double.Parse(text, CultureInfo.InvariantCulture));
    }

    /// <summary>Reads the two weights of a beta distribution: <c>1,1</c>.</summary>
    public static BetaDistribution Beta(string text)
    {
        var weights = text.Split(',').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray();
        return new BetaDistribution(weights[0], weights[1]);
    }
}
