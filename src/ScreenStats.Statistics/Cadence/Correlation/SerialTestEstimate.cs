using System.Collections.Immutable;

namespace ScreenStats.Statistics.Cadence.Correlation;

/// <summary>How far misses repeat in a person, and how sensitive a test is by day, from a table of serial tests.</summary>
public sealed record SerialTestEstimate
{
    internal SerialTestEstimate()
    {
    }

    /// <summary>What was assumed.</summary>
    public required SerialTestOptions Options { get; init; }

    /// <summary>
    /// The correlation of two tests of a person on the normal scale, in [0, <see cref="SerialTestFit.HighestCorrelation"/>], with limits; undefined where no cell has two
    /// tests.
    /// </summary>
    public required Estimate Correlation { get; init; }

    /// <summary>
    /// The variance of the correlation with people in several cells, against that of separate people: below 1 where columns are compared with each other. The limits
    /// are set by it; it is the larger of that with nobody shared between days of the first test and that with as many as can be.
    /// </summary>
    public required double SharedPeopleFactor { get; init; }

    /// <summary>The chance of a table that speaks as much for a correlation where there is none (one-sided, with the width of the limits).</summary>
    public required double? ProbabilityIfIndependent { get; init; }

    /// <summary>Sensitivities by group and day, 0.00003 to 0.99997; at either end the table sets no bound.</summary>
    public required ImmutableArray<SerialSensitivity> Sensitivities { get; init; }

    /// <summary>The odds of staying for the next test of people already positive, against the others; null where not estimated.</summary>
    public required double? StayingOddsRatio { get; init; }

    /// <summary>For each day with a test after it, the share of those tested again who are still infected, as taken from the table.</summary>
    public required ImmutableArray<SerialRecovery> Recoveries { get; init; }

    /// <summary>The logarithm of the composite likelihood, without constants.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>Cells, observed and fitted.</summary>
    public required ImmutableArray<SerialCellFit> Cells { get; init; }
}
