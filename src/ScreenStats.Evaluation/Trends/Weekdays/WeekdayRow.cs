using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Trends.Weekdays;

/// <summary>One day of the week of a series.</summary>
public sealed record WeekdayRow
{
    /// <summary>What tells the row from the others: measure, basis and weekday, joined by vertical bars.</summary>
    public required string Key { get; init; }

    /// <summary>What is followed.</summary>
    public required TrendMeasure Measure { get; init; }

    /// <summary>Which runs it stands on.</summary>
    public required TrendBasis Basis { get; init; }

    /// <summary>Name of the day, in English: Monday to Sunday.</summary>
    public required string Weekday { get; init; }

    /// <summary>Trials.</summary>
    public long Trials => Share.Trials;

    /// <summary>Events.</summary>
    public long Events => Share.Events;

    /// <summary>The share with its limits.</summary>
    public required ProportionFinding Share { get; init; }

    /// <summary>Odds against the mean of the days, within the weeks of each site; null where undefined.</summary>
    public required double? OddsRatio { get; init; }

    /// <summary>Lower limit of that ratio.</summary>
    public required double? RatioLower { get; init; }

    /// <summary>Upper limit of that ratio.</summary>
    public required double? RatioUpper { get; init; }

    /// <summary>Why there is no ratio; null where there is one.</summary>
    public required string? OddsRatioUndefined { get; init; }

    /// <summary>The chance of days that differ as much where they do not, of all days together; null where there is none.</summary>
    public required double? PValue { get; init; }

    /// <summary>Why there is no such chance; null where there is one.</summary>
    public required string? PValueUndefined { get; init; }

    /// <summary>Within what the days are compared: site-weeks, or weeks where there are very many sites.</summary>
    public required string Within { get; init; }

    /// <summary>Whether the series leads among those of its measure.</summary>
    public required bool Leads { get; init; }
}
