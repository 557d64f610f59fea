using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Trends.Growth;

/// <summary>How fast a rate grew over one stretch of time.</summary>
public sealed record GrowthRow
{
    /// <summary>What tells the row from the others: measure, basis, level, segment and first day, joined by vertical bars.</summary>
    public required string Key { get; init; }

    /// <summary>What is followed.</summary>
    public required TrendMeasure Measure { get; init; }

    /// <summary>Which runs it stands on.</summary>
    public required TrendBasis Basis { get; init; }

    /// <summary>Of what part of the program.</summary>
    public required Grouping By { get; init; }

    /// <summary>The part; empty for the whole program.</summary>
    public required string Level { get; init; }

    /// <summary>First day.</summary>
    public required DateOnly? From { get; init; }

    /// <summary>Last day.</summary>
    public required DateOnly? To { get; init; }

    /// <summary>Which stretch.</summary>
    public required GrowthSegment Segment { get; init; }

    /// <summary>Points fitted.</summary>
    public required int Points { get; init; }

    /// <summary>Growth for each week, as a share of the odds: 0.1 is a tenth more each week.</summary>
    public required EstimateFinding GrowthPerWeek { get; init; }

    /// <summary>Days to double; undefined where it does not rise. The upper limit is null where the limits of growth hold none.</summary>
    public required EstimateFinding Doubling { get; init; }

    /// <summary>Days to halve; undefined where it does not fall. The upper limit is null where the limits of growth hold none.</summary>
    public required EstimateFinding Halving { get; init; }

    /// <summary>The fewest days to double that the limits of growth allow; null where they hold no growth, and for predictive value.</summary>
    public required double? FastestDoubling { get; init; }

    /// <summary>The rate at the first point by the line; null where nothing was fitted.</summary>
    public required double? RateFrom { get; init; }

    /// <summary>The rate at the last point by the line; null where nothing was fitted.</summary>
    public required double? RateTo { get; init; }

    /// <summary>What the limits say.</summary>
    public required GrowthDirection Direction { get; init; }

    /// <summary>Whether the direction holds at a confidence that allows for how many sites are looked at; the same as the direction for the whole program.</summary>
    public required bool StandsOut { get; init; }

    /// <summary>Whether the series leads among those of its measure.</summary>
    public required bool Leads { get; init; }
}
