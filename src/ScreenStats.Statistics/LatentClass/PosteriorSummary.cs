using System.Globalization;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>What a posterior distribution says of one figure.</summary>
/// <param name="Mean">Its mean.</param>
/// <param name="Median">Its median.</param>
/// <param name="Lower">The value below which the lower tail lies.</param>
/// <param name="Upper">The value above which the upper tail of the same probability lies.</param>
public readonly record struct PosteriorSummary(double Mean, double Median, double Lower, double Upper)
{
    /// <summary>The summary in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Mean} [{Lower}, {Median}, {Upper}]");
}
