using MathNet.Numerics;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>How the events of one lot compare with what falls on it if, within each stratum, all lots are alike.</summary>
public sealed record StratifiedTest
{
    internal StratifiedTest(StratifiedCount count, double expected, double variance, double upper, double lower, double twoSided, double logUpper, double logLower)
    {
        Strata = count.Strata;
        InformativeStrata = count.InformativeStrata;
        InformativeEvents = count.InformativeEvents;
        Observed = count.ObservedInInformative;
        Expected = expected;
        Variance = variance;
        AtLeastAsMany = upper;
        AtMostAsMany = lower;
        TwoSided = twoSided;
        LogAtLeastAsMany = logUpper;
        LogAtMostAsMany = logLower;
    }

    /// <summary>Strata given.</summary>
    public int Strata { get; }

    /// <summary>Strata that can tell the lot from the others: with trials of both, and at least one event and one trial without.</summary>
    public int InformativeStrata { get; }

    /// <summary>Events of all lots in the informative strata.</summary>
    public long InformativeEvents { get; }

    /// <summary>Events of the lot in the informative strata.</summary>
    public long Observed { get; }

    /// <summary>Events expected of the lot in the informative strata.</summary>
    public double Expected { get; }

    /// <summary>The variance of that number.</summary>
    public double Variance { get; }

    /// <summary>The chance of at least as many events as observed; 1 without an informative stratum.</summary>
    public double AtLeastAsMany { get; }

    /// <summary>The chance of at most as many events as observed; 1 without an informative stratum.</summary>
    public double AtMostAsMany { get; }

    /// <summary>The chance of a number as unlikely as the observed one, or more so.</summary>
    public double TwoSided { get; }

    /// <summary>The natural logarithm of <see cref="AtLeastAsMany"/>, finite where that is too small for a number.</summary>
    public double LogAtLeastAsMany { get; }

    /// <summary>The natural logarithm of <see cref="AtMostAsMany"/>.</summary>
    public double LogAtMostAsMany { get; }

    /// <summary>The chance of at least as many events as observed where counts vary by more than chance.</summary>
    /// <param name="overdispersion">By how much the variance of the count exceeds that of independent events, finite and 1 or more.</param>
    /// <returns>The tail of the exact chance's normal score divided by the square root; the exact chance itself where that is one half or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An overdispersion below 1, or not finite.</exception>
    /// <remarks>
    /// With few events it stays as skew as the exact chance, with many it is a normal test with the widened variance. The same rule as for the
    /// limits of <see cref="LotRatio"/>, and ours; how often it holds is measured on drawn programs (tests/reference/studies/flag-study.csv).
    /// </remarks>
    public double AtLeastAsManyWidened(double overdispersion)
    {
        Guard.DesignEffect(overdispersion, nameof(overdispersion));
        if (AtLeastAsMany >= 0.5 || overdispersion == 1) return AtLeastAsMany;
        return SpecialFunctions.Erfc(Score(LogAtLeastAsMany) / Math.Sqrt(2 * overdispersion)) / 2;
    }

    // Far out the tail is the density over z (1 - 1/z² + 3/z⁴); below 1e-200 the next term is 1e-8 of it.
    private static double Score(double logTail)
    {
        if (logTail > -460) return Quantile.NormalTail(Math.Exp(logTail));
        var z = Math.Sqrt(-2 * logTail);
        for (var step = 0; step < 20; step++)
            z = Math.Sqrt(-2 * (logTail + (0.5 * Math.Log(2 * Math.PI)) + Math.Log(z) - Math.Log(1 - (1 / (z * z)) + (3 / (z * z * z * z)))));
        return z;
    }

    /// <summary>Why the test can find nothing; null where it can.</summary>
    public UndefinedReason? Reason => InformativeStrata == 0 ? UndefinedReason.NoInformativeStratum : null;
}
