using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>
/// The number of a stratum's events that fall on the lot, at any ratio of the lot's rate to the others' given by its logarithm: noncentral
/// hypergeometric (the ratio is one of odds) or binomial (the ratio is one of rates). Terms follow from one another by exact ratios, outwards from
/// the most likely number, so each keeps its relative precision.
/// </summary>
internal readonly struct StratumCount
{
    private readonly long events;
    private readonly long trials;
    private readonly long draws;
    private readonly double share;

    public StratumCount(LotStratum stratum)
    {
        (events, trials, draws, share) = (stratum.Events, stratum.Trials, stratum.LotTrials, double.NaN);
        Lowest = Math.Max(0, draws - (trials - events));
        Highest = Math.Min(events, draws);
        Observed = stratum.LotEvents;
    }

    public StratumCount(SharedStratum stratum)
    {
        (events, trials, draws, share) = (stratum.Events, 0, 0, stratum.Share);
        Lowest = share >= 1 ? events : 0;
        Highest = share <= 0 ? 0 : events;
        Observed = stratum.LotEvents;
    }

    public long Lowest { get; }

    public long Highest { get; }

    public long Observed { get; }

    public long Events => events;

    /// <summary>Whether the number could have been another.</summary>
    public bool Informative => Highest > Lowest;

    /// <summary>The probabilities from the number returned upwards; those below the threshold times the largest are left out. They add up to 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (long From, double[] Probabilities) Distribution(double logRatio, double threshold)
    {
        var mode = Mode(logRatio);
        var ratio = Math.Exp(logRatio);
        var below = new List<double>();
        double sum = 1, term = 1;
        for (var k = mode; k > Lowest && double.IsFinite(ratio); k--)
        {
            term /= Step(k - 1) * ratio;
            if (!(term > threshold)) break;
            below.Add(term);
            sum += term;
        }

        var above = new List<double>();
        term = 1;
        for (var k = mode; k < Highest; k++)
        {
            term *= Step(k) * ratio;
            if (!(term > threshold)) break;
            above.Add(term);
            sum += term;
        }

        var probabilities = new double[below.Count + 1 + above.Count];
        for (var i = 0; i < below.Count; i++) probabilities[below.Count - 1 - i] = below[i] / sum;
        probabilities[below.Count] = 1 / sum;
        for (var i = 0; i < above.Count; i++) probabilities[below.Count + 1 + i] = above[i] / sum;
        return (mode - below.Count, probabilities);
    }

    /// <summary>The mean and the variance at a ratio.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Mean, double Variance) Moments(double logRatio)
    {
        if (!Informative) return (Lowest, 0);
        if (!double.IsNaN(share))
        {
            var chance = LogitScale.Fraction(LogitScale.Logit(share) + logRatio);
            return (events * chance, events * chance * LogitScale.Fraction(-LogitScale.Logit(share) - logRatio));
        }

        if (logRatio == 0)
        {
            var part = (double)draws / trials;
            return (events * part, trials == 1 ? 0 : events * part * ((double)(trials - draws) / trials) * ((double)(trials - events) / (trials - 1)));
        }

        var (from, probabilities) = Distribution(logRatio, 1e-20);
        double mean = 0, variance = 0;
        for (var i = 0; i < probabilities.Length; i++) mean += i * probabilities[i];
        for (var i = 0; i < probabilities.Length; i++) variance += (i - mean) * (i - mean) * probabilities[i];
        return (from + mean, variance);
    }

    /// <summary>The logarithm of the sum over k of the null probability of k times the ratio to the power k.</summary>
    public double LogNormalizer(double logRatio)
    {
        if (!Informative) return Lowest * logRatio;
        var (from, probabilities) = Distribution(logRatio, 1e-20);
        var top = Array.IndexOf(probabilities, probabilities.Max());
        var k = from + top;
        var log = double.IsNaN(share) ? Hypergeometric.LogProbability(k, trials, events, draws) : Binomial.LogProbability(k, events, share, 1 - share);
        return log + (k * logRatio) - Math.Log(probabilities[top]);
    }

    /// <summary>The probability of k + 1 over that of k, at a ratio of 1.</summary>
    private double Step(long k) => double.IsNaN(share)
        ? (double)(events - k) / (k + 1) * ((double)(draws - k) / (trials - events - draws + k + 1))
        : (double)(events - k) / (k + 1) * (share / (1 - share));

    /// <summary>The most likely number: the first whose next is not more likely, by bisection, as the steps fall.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private long Mode(double logRatio)
    {
        var (low, high) = (Lowest, Highest);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            if (Math.Log(Step(middle)) + logRatio > 0) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
