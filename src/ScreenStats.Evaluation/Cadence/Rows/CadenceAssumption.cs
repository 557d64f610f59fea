namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>One figure that the answer rests on.</summary>
public sealed record CadenceAssumption
{
    /// <summary>Its name in files: lower case, words joined by hyphens.</summary>
    public required string Assumption { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>The figure; null where it is not known.</summary>
    public required double? Value { get; init; }

    /// <summary>Why there is no figure; null where there is one.</summary>
    public required string? ValueUndefined { get; init; }

    /// <summary>Lower end of its range; null where it is taken as exact or not known.</summary>
    public required double? Lower { get; init; }

    /// <summary>Upper end of its range; null likewise.</summary>
    public required double? Upper { get; init; }

    /// <summary>In what it is measured, in words.</summary>
    public required string Unit { get; init; }

    /// <summary>Where it comes from.</summary>
    public required CadenceOrigin Origin { get; init; }

    /// <summary>Its source in words; where it is not known what is done without it. Never a count of the data.</summary>
    public required string Source { get; init; }

    /// <summary>The method that made it or its range; null where it is not known.</summary>
    public required string? Method { get; init; }
}
