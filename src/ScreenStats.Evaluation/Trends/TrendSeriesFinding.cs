namespace ScreenStats.Evaluation.Trends;

/// <summary>One series: what it stands on and how it was fitted.</summary>
public sealed record TrendSeriesFinding
{
    /// <summary>What tells the series from the others: measure and basis, joined by a vertical bar.</summary>
    public required string Key { get; init; }

    /// <summary>What is followed.</summary>
    public required TrendMeasure Measure { get; init; }

    /// <summary>Which runs it stands on.</summary>
    public required TrendBasis Basis { get; init; }

    /// <summary>Whether the series leads among those of its measure.</summary>
    public required bool Leads { get; init; }

    /// <summary>Trials.</summary>
    public required long Trials { get; init; }

    /// <summary>Events.</summary>
    public required long Events { get; init; }

    /// <summary>Runs that are left out of the series because of its basis.</summary>
    public required long RunsLeftOut { get; init; }

    /// <summary>Positive runs that still wait for a result.</summary>
    public required long Pending { get; init; }

    /// <summary>Periods shown.</summary>
    public required int Periods { get; init; }

    /// <summary>Periods shown in which nothing was counted.</summary>
    public required int PeriodsWithoutTrials { get; init; }

    /// <summary>Periods at the end that are not complete, and not fitted.</summary>
    public required int PeriodsIncomplete { get; init; }

    /// <summary>Complete periods with trials, which the smooths go through.</summary>
    public required int PeriodsSmoothed { get; init; }

    /// <summary>What a period of the table is: day, week or month.</summary>
    public required string PeriodsAre { get; init; }

    /// <summary>What a point of the fits of growth is: day, week or month.</summary>
    public required string FittedBy { get; init; }

    /// <summary>First day fitted; null where nothing is.</summary>
    public required DateOnly? FittedFrom { get; init; }

    /// <summary>Last day fitted; null where nothing is.</summary>
    public required DateOnly? FittedTo { get; init; }

    /// <summary>Points fitted that have trials.</summary>
    public required int FittedPoints { get; init; }

    /// <summary>What all counts are divided by before anything is fitted, because trials come in clusters; at least 1.</summary>
    public required double Deflation { get; init; }

    /// <summary>Which clusters that is from: persons within site-weeks, sites within weeks, or none.</summary>
    public required string DeflationFrom { get; init; }

    /// <summary>Standard deviation of the wandering level from one period to the next, on the logit scale; null where there is no smooth.</summary>
    public required double? LevelDeviation { get; init; }

    /// <summary>Why there is no smooth; null where there is one.</summary>
    public required string? LevelDeviationUndefined { get; init; }
}
