using System.Collections.Immutable;

namespace ScreenStats.Reporting.Charts.Worth;

/// <summary>How likely an option is the best, over values of an effect.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Points">Values in rising order, with the share of draws in which it is the best, and whether it is the one to choose there.</param>
/// <param name="IsJudged">Whether the verdict is of it.</param>
internal sealed record AcceptabilityLine(string Name, ImmutableArray<(double Value, double Share, bool Chosen)> Points, bool IsJudged = false)
{
    /// <summary>Its largest share.</summary>
    public double Most => Points.Max(point => point.Share);
}
