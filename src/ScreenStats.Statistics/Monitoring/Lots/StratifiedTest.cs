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

    /// <summary>Why the test can find nothing; null where it can.</summary>
    public UndefinedReason? Reason => InformativeStrata == 0 ? UndefinedReason.NoInformativeStratum : null;
}
