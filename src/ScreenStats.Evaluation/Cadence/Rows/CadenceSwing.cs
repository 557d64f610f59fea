namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>What one assumption does to the answer, the others at their centre.</summary>
public sealed record CadenceSwing
{
    /// <summary>The assumption, as in the table of assumptions.</summary>
    public required string Assumption { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>The lower end of its range.</summary>
    public required double AtLower { get; init; }

    /// <summary>The upper end of its range.</summary>
    public required double AtUpper { get; init; }

    /// <summary>Infectious days removed at the lower end, by the option spoken of, against no screening.</summary>
    public required double Low { get; init; }

    /// <summary>The same at the upper end.</summary>
    public required double High { get; init; }

    /// <summary>How far the two lie apart.</summary>
    public required double Swing { get; init; }

    /// <summary>The option chosen at the lower end; null where nothing states what a step must add.</summary>
    public required string? OptionAtLower { get; init; }

    /// <summary>The option chosen at the upper end; null likewise.</summary>
    public required string? OptionAtUpper { get; init; }
}
