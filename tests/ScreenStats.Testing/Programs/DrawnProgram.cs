using ScreenStats.Counting.Cubes;

namespace ScreenStats.Testing.Programs;

/// <summary>A drawn program: its cubes, and the truth behind them.</summary>
public sealed record DrawnProgram
{
    /// <summary>The plan it was drawn from.</summary>
    public required DrawnPlan Plan { get; init; }

    /// <summary>The cubes, as a source delivers them.</summary>
    public required TallyCells Cells { get; init; }

    /// <summary>The chance of a refuted positive (a false positive that is followed up) of a valid test with a sound lot, by site.</summary>
    public required IReadOnlyDictionary<string, double> RefutedRates { get; init; }

    /// <summary>The chance of an unusable run, by site.</summary>
    public required IReadOnlyDictionary<string, double> UnusableRates { get; init; }

    /// <summary>The faulty lot; null where every lot is sound.</summary>
    public required string? FaultyLot { get; init; }

    /// <summary>The faulty lot's share of all runs; 0 where every lot is sound.</summary>
    public required double FaultyShare { get; init; }

    /// <summary>Refuted positives that the fault adds, as expected; 0 where every lot is sound.</summary>
    public required double ExpectedFaultyRefuted { get; init; }

    /// <summary>The first day of the fault; null where every lot is sound.</summary>
    public required DateOnly? FaultFrom { get; init; }
}
