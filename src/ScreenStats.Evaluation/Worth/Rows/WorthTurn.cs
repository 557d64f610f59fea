namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>The value of a figure at which the option judged just repays its cost against no screening, the others at their centre.</summary>
public sealed record WorthTurn
{
    /// <summary>The figure; joined to the option by a vertical bar where that is not the one judged.</summary>
    public string Key { get => field ?? Figure; init; }

    /// <summary>
    /// <c>weekly-incidence</c>, <c>prevalence</c>, <c>specificity</c>, <c>cost-of-screen</c>, <c>participation</c>, <c>value-of-effect</c>, or <c>half-false-prevalence</c>: the prevalence below which half of the alarms are false.
    /// </summary>
    public required string Figure { get; init; }

    /// <summary>The option that it turns, with its confirmation; empty for the one judged.</summary>
    public string Option { get; init; } = "";

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>In what it is measured, in words.</summary>
    public required string Unit { get; init; }

    /// <summary>The break-even, the one nearest to the figure as it is where there are several; null where there is none.</summary>
    public required double? BreakEven { get; init; }

    /// <summary>Why there is none; null where there is one.</summary>
    public required string? BreakEvenUndefined { get; init; }

    /// <summary>The other end of the range in which the option pays, where that has two; null where it has not.</summary>
    public double? OtherBreakEven { get; init; }

    /// <summary>The figure as it is; null where not known.</summary>
    public required double? Present { get; init; }

    /// <summary>Why it is not known; null where it is.</summary>
    public required string? PresentUndefined { get; init; }

    /// <summary>Lower limit of the figure as it is; null where it is taken as exact.</summary>
    public required double? Lower { get; init; }

    /// <summary>Upper limit, likewise.</summary>
    public required double? Upper { get; init; }

    /// <summary>On which side of the break-even the option pays.</summary>
    public required WorthPays Pays { get; init; }

    /// <summary>The method of the break-even; null where there is none.</summary>
    public required string? Method { get; init; }
}
