using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Trends.Changes;

/// <summary>One change of a trend: found in the counts, or dated by the program file.</summary>
public sealed record TrendChangeRow
{
    /// <summary>What tells the row from the others: measure, basis, kind, day and a number, joined by vertical bars.</summary>
    public required string Key { get; init; }

    /// <summary>What is followed.</summary>
    public required TrendMeasure Measure { get; init; }

    /// <summary>Which runs it stands on.</summary>
    public required TrendBasis Basis { get; init; }

    /// <summary>Found or dated.</summary>
    public required TrendChangeKind Kind { get; init; }

    /// <summary>The day of the change: as estimated, or as dated.</summary>
    public required DateOnly On { get; init; }

    /// <summary>Lower limit of the day of a change that was found; null for a dated one.</summary>
    public required DateOnly? OnLower { get; init; }

    /// <summary>Upper limit of the day of a change that was found; null for a dated one.</summary>
    public required DateOnly? OnUpper { get; init; }

    /// <summary>What changed, in the program file's words; empty for one that was found.</summary>
    public required string What { get; init; }

    /// <summary>The sites that it is about, as patterns joined by commas; empty for all.</summary>
    public required string Sites { get; init; }

    /// <summary>For a dated change, how many times as high the odds are just after as just before, beyond the slope.</summary>
    public required EstimateFinding LevelRatio { get; init; }

    /// <summary>Growth for each week before.</summary>
    public required EstimateFinding SlopeBefore { get; init; }

    /// <summary>Growth for each week after.</summary>
    public required EstimateFinding SlopeAfter { get; init; }

    /// <summary>How many times as high growth for a week is after as before (ratio of the two factors).</summary>
    public required EstimateFinding SlopeRatio { get; init; }

    /// <summary>The chance of as much where nothing changed: of the slope for a found change, of the level for a dated one; null where there is none.</summary>
    public required double? PValue { get; init; }

    /// <summary>Why there is no such chance; null where there is one.</summary>
    public required string? PValueUndefined { get; init; }

    /// <summary>The method, by its name in the catalogue; null where nothing was fitted.</summary>
    public required string? Method { get; init; }

    /// <summary>Whether the series leads among those of its measure.</summary>
    public required bool Leads { get; init; }
}
