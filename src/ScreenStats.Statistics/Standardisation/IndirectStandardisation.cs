namespace ScreenStats.Statistics.Standardisation;

/// <summary>Indirect standardisation: what was observed against what the reference's rates lead to expect.</summary>
public static class IndirectStandardisation
{
    /// <summary>Observed over expected events, and the indirectly standardised rate.</summary>
    /// <param name="strata">
    /// The strata of one site, in any order. All strata of the reference belong in, also those in which the site counted nobody: its crude rate is over all.
    /// </param>
    /// <param name="method">How the limits are computed.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The ratio; undefined where the site counted nobody, a stratum of it has no reference, or no event is expected.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An unknown method or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// E = Σ n R / N, ratio O / E, limits of O over E; the reference's rates count as known. Works where strata are too small for their own rates; ratios of two
    /// sites are not comparable where their strata differ much. Source: Breslow NE, Day NE, Statistical Methods in Cancer Research II, 1987,
    /// chapter 2 (from memory).
    /// </remarks>
    public static IndirectRatio Of(IReadOnlyList<ReferenceStratum> strata, IndirectMethod method = IndirectMethod.Exact, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(strata);
        Guard.Confidence(confidence);
        if (!Enum.IsDefined(method)) throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows.");
        long observed = 0;
        double expected = 0, population = 0, events = 0, reference = 0;
        var missing = false;
        foreach (var stratum in strata.OrderBy(stratum => stratum.ReferencePopulation).ThenBy(stratum => stratum.Population).ThenBy(stratum => stratum.ReferenceEvents).ThenBy(stratum => stratum.Events))
        {
            observed += stratum.Events;
            population += stratum.Population;
            events += stratum.ReferenceEvents;
            reference += stratum.ReferencePopulation;
            if (stratum.Population == 0) continue;
            if (stratum.ReferencePopulation == 0) missing = true;
            else expected += stratum.Population * (stratum.ReferenceEvents / stratum.ReferencePopulation);
        }

        IndirectRatio Without(UndefinedReason reason) => new(observed, missing ? null : expected, Estimate.Undefined(reason), Estimate.Undefined(reason));
        if (population == 0) return Without(UndefinedReason.NoTrials);
        if (missing) return Without(UndefinedReason.StratumWithoutReference);
        if (expected == 0) return Without(UndefinedReason.NoEventsExpected);
        var limits = method == IndirectMethod.Exact ? PoissonInterval.Exact(observed, confidence) : PoissonInterval.Byar(observed, confidence);
        var crude = events / reference;
        Estimate Scaled(double factor) => Estimate.Of(
            observed * factor, new Interval(limits.Lower * factor, limits.Upper * factor).Including(observed * factor),
            method == IndirectMethod.Exact ? "indirectly standardised, exact Poisson" : "indirectly standardised, Byar", confidence);
        return new IndirectRatio(observed, expected, Scaled(1 / expected), Scaled(crude / expected));
    }
}
