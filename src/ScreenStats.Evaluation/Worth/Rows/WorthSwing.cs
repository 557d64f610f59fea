namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>What one figure does to the net benefit of the option judged, the others at their centre.</summary>
public sealed record WorthSwing
{
    /// <summary>The figure, as in the table of assumptions or of costs.</summary>
    public required string Figure { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>The lower end of its range.</summary>
    public required double AtLower { get; init; }

    /// <summary>The upper end of its range.</summary>
    public required double AtUpper { get; init; }

    /// <summary>Net benefit against no screening at the lower end.</summary>
    public required double Low { get; init; }

    /// <summary>The same at the upper end.</summary>
    public required double High { get; init; }

    /// <summary>How far the two lie apart.</summary>
    public required double Swing { get; init; }

    /// <summary>The key of the best option at the lower end.</summary>
    public required string BestAtLower { get; init; }

    /// <summary>The key of the best option at the upper end.</summary>
    public required string BestAtUpper { get; init; }
}
