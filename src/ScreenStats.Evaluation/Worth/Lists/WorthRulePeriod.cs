using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>What the stated rule of frequency would have made of one period.</summary>
public sealed record WorthRulePeriod
{
    /// <summary>The first day of the period.</summary>
    public required DateOnly Period { get; init; }

    /// <summary>Its days within the data.</summary>
    public required int Days { get; init; }

    /// <summary>Valid tests.</summary>
    public required long Tests { get; init; }

    /// <summary>Positive ones.</summary>
    public required long Positives { get; init; }

    /// <summary>Their share with its limits.</summary>
    public required EstimateFinding Positivity { get; init; }

    /// <summary>The option in force, decided on the periods before.</summary>
    public required string InForce { get; init; }

    /// <summary>The option in force from the next period on.</summary>
    public required string Next { get; init; }

    /// <summary>Whether both limits of the positivity lead to the same option.</summary>
    public required bool IsSure { get; init; }

    /// <summary>Screens of one person in the period under the option in force.</summary>
    public required double ScreensPerPerson { get; init; }

    /// <summary>The same without the runs of flagged lots; null where none is flagged.</summary>
    public WorthRuleReading? WithoutFlaggedLots { get; init; }
}
