using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>How the rates of lots are spread: a beta distribution, or the reason why there is none.</summary>
public sealed record BetaBinomialFit
{
    internal BetaBinomialFit(int lots, long events, long trials, BetaDistribution? rates, double? logLikelihood, UndefinedReason? reason)
    {
        Lots = lots;
        Events = events;
        Trials = trials;
        Rates = rates;
        LogLikelihood = logLikelihood;
        Reason = reason;
    }

    /// <summary>Lots with trials.</summary>
    public int Lots { get; }

    /// <summary>Events of all lots.</summary>
    public long Events { get; }

    /// <summary>Trials of all lots.</summary>
    public long Trials { get; }

    /// <summary>The distribution of the lots' rates; null with a <see cref="Reason"/>.</summary>
    public BetaDistribution? Rates { get; }

    /// <summary>The mean of <see cref="Rates"/>; of lots that are all alike their common rate; else null.</summary>
    public double? Mean => Rates?.Mean ?? (Reason is UndefinedReason.LotsAllAlike or UndefinedReason.NoEvents or UndefinedReason.OnlyEvents ? (double)Events / Trials : null);

    /// <summary>The correlation of two trials of one lot, 1 / (alpha + beta + 1); 0 where the lots are all alike; else null.</summary>
    public double? Correlation => Rates is { } rates ? 1 / (rates.Alpha + rates.Beta + 1) : Reason == UndefinedReason.LotsAllAlike ? 0 : null;

    /// <summary>The natural logarithm of the likelihood, binomial coefficients included; of lots that are all alike the binomial one; null without a fit.</summary>
    public double? LogLikelihood { get; }

    /// <summary>
    /// Why there is no distribution: no trials, no or only events, fewer than two lots, lots that differ no more than by chance
    /// (<see cref="UndefinedReason.LotsAllAlike"/>), or in each lot no event or nothing else (<see cref="UndefinedReason.LotsAllOrNothing"/>).
    /// </summary>
    public UndefinedReason? Reason { get; }
}
