using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Trends.Interruptions;

/// <summary>How an interrupted series is fitted.</summary>
public sealed record InterruptionOptions : SeriesOptions
{
    /// <summary>Whether the series has a growth of its own besides the changes.</summary>
    public bool Trend { get; init; } = true;

    /// <summary>Pairs of sine and cosine for the season: 0 for none, up to 6.</summary>
    public int SeasonPairs { get; init; }

    /// <summary>The length of the season in the unit of time of the series, above 0: 52.18 weeks, 12 months.</summary>
    public double SeasonLength { get; init; } = 365.25 / 7;

    internal void CheckAll()
    {
        Check();
        if (Limits == TrendLimits.ProfileLikelihood) throw new ArgumentOutOfRangeException(nameof(Limits), Limits, "Limits of an interrupted series are plain, quasi or robust.");
        if (SeasonPairs is < 0 or > 6) throw new ArgumentOutOfRangeException(nameof(SeasonPairs), SeasonPairs, "The pairs must lie between 0 and 6.");
        if (!(SeasonLength > 0) || !double.IsFinite(SeasonLength)) throw new ArgumentOutOfRangeException(nameof(SeasonLength), SeasonLength, "The length of the season must be a finite number above 0.");
    }
}
