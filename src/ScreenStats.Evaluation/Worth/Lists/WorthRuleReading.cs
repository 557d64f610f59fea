using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>What the stated rule of frequency makes of one period without the runs of flagged lots, those of the periods before left out too.</summary>
public sealed record WorthRuleReading
{
    /// <summary>Valid tests without those of flagged lots.</summary>
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

    /// <summary>The place of the option in force among the lines of the rule, the least frequent 0.</summary>
    [JsonIgnore]
    internal int Line { get; init; }
}
