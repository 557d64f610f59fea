namespace ScreenStats.Evaluation.Cadence.Rows;

/// <summary>One way of screening.</summary>
public sealed record CadenceOptionFinding
{
    /// <summary>The name of what was done in the data, which stands beside the options: no option of a program file has it.</summary>
    public const string AsDone = "(as done)";

    /// <summary>Its name, unique.</summary>
    public required string Option { get; init; }

    /// <summary>Days from one screen to the next, on average on fixed weekdays and as done; null where nobody is screened.</summary>
    public required double? EveryDays { get; init; }

    /// <summary>Why there are no days between screens; null where there are.</summary>
    public required string? EveryDaysUndefined { get; init; }

    /// <summary>The weekdays of screening in words, Monday first, joined by a comma and a blank; empty where it does not go by weekdays.</summary>
    public required string Weekdays { get; init; }

    /// <summary>Screens that are due of one person in a day.</summary>
    public required double ScreensPerDay { get; init; }

    /// <summary>Whether nobody is screened.</summary>
    public required bool IsNone { get; init; }

    /// <summary>Whether it is what was done in the data, with the gaps between a person's screens as they were. Not one of the options to choose from.</summary>
    public required bool IsAsDone { get; init; }

    /// <summary>Whether the program set out to do it.</summary>
    public required bool IsPlanned { get; init; }

    /// <summary>Whether it is the one that the rule chooses.</summary>
    public required bool IsChosen { get; init; }

    /// <summary>Whether it is the one that is spoken of first: the one chosen, else the one planned, else the one nearest to what was done.</summary>
    public required bool Leads { get; init; }
}
