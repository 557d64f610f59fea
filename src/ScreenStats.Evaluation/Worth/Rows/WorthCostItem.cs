using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>One thing that the program paid for, over the time of its data.</summary>
public sealed record WorthCostItem
{
    /// <summary>Its name in files: lower case, words joined by hyphens.</summary>
    public required string Item { get; init; }

    /// <summary>Its name for people.</summary>
    public required string Name { get; init; }

    /// <summary>What one costs, with the ends of its 95 % range; without a figure where the program file states none.</summary>
    public required EstimateFinding UnitCost { get; init; }

    /// <summary>How many; without a figure where that is not known.</summary>
    public required EstimateFinding Units { get; init; }

    /// <summary>Price times number, with bounds from the ends of both.</summary>
    public required EstimateFinding Cost { get; init; }

    /// <summary>Where the price comes from.</summary>
    public required CadenceOrigin Origin { get; init; }

    /// <summary>Its source in words; where it is not stated, what stating it would allow.</summary>
    public required string Source { get; init; }

    /// <summary>Whether it is a part of another item that stands in the sum: then it is not added up.</summary>
    public required bool IsPart { get; init; }
}
