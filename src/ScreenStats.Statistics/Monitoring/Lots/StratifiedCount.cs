using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ScreenStats.Statistics.Monitoring.Lots;

/// <summary>
/// The number of events of all strata that fall on the lot: the convolution of what falls on it in each. All terms are positive, so that a far
/// tail keeps its relative precision; what lies 250 powers of ten below the largest probability is left out at each step.
/// </summary>
internal sealed class StratifiedCount
{
    private const double Threshold = 1e-250;
    private readonly StratumCount[] strata;
    private readonly long constant;

    public StratifiedCount(IEnumerable<StratumCount> all)
    {
        var every = all.ToArray();
        strata = [.. every.Where(stratum => stratum.Informative)];
        constant = every.Where(stratum => !stratum.Informative).Sum(stratum => stratum.Lowest);
        Strata = every.Length;
        Observed = every.Sum(stratum => stratum.Observed);
        Lowest = every.Sum(stratum => stratum.Lowest);
        Highest = every.Sum(stratum => stratum.Highest);
        InformativeEvents = strata.Sum(stratum => stratum.Events);
    }

    public int Strata { get; }

    public int InformativeStrata => strata.Length;

    public long InformativeEvents { get; }

    public long Observed { get; }

    public long ObservedInInformative => Observed - constant;

    public long Lowest { get; }

    public long Highest { get; }

    /// <summary>The mean and the variance at a ratio given by its logarithm, over the informative strata.</summary>
    public (double Mean, double Variance) Moments(double logRatio)
    {
        double mean = 0, variance = 0;
        foreach (var stratum in strata)
        {
            var (m, v) = stratum.Moments(logRatio);
            mean += m;
            variance += v;
        }

        return (mean, variance);
    }

    /// <summary>The ratio, as its logarithm, at which the mean over the informative strata is the one given, strictly between the bounds.</summary>
    public double LogRatioOfMean(double target)
    {
        double low = double.NegativeInfinity, high = double.PositiveInfinity, point = 0, widen = 1;
        for (var step = 0; step < 200; step++)
        {
            var (mean, variance) = Moments(point);
            if (mean > target) high = point;
            else low = point;
            var next = point - ((mean - target) / variance);
            if (Math.Abs(next - point) < 1e-12 * (1 + Math.Abs(point))) return next;
            if (!(next > low && next < high && Math.Abs(next - point) < 4))
            {
                next = double.IsInfinity(low) ? point - widen : double.IsInfinity(high) ? point + widen : (low + high) / 2;
                widen *= 2;
            }

            point = next;
        }

        return point;
    }

    /// <summary>The logarithm of the sum over k of the null probability of k times the ratio to the power k.</summary>
    public double LogNormalizer(double logRatio) => strata.Sum(stratum => stratum.LogNormalizer(logRatio)) + (constant * logRatio);

    /// <summary>The probabilities at a ratio, from the number returned upwards.</summary>
    public (long From, double[] Probabilities) Distribution(double logRatio)
    {
        var from = constant;
        double[] sum = [1];
        foreach (var stratum in strata)
        {
            var (start, own) = stratum.Distribution(logRatio, Threshold);
            from += start;
            sum = Add(sum, own, ref from);
        }

        return (from, sum);
    }

    // Compiled for good at once: most of the time of a test is spent here. Each sum stays in a register until it is whole, its terms in the order of the second list.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double[] Add(double[] left, double[] right, ref long from)
    {
        const int Block = 16;
        var result = new double[left.Length + right.Length - 1];
        var padded = new double[left.Length + (2 * (right.Length - 1)) + Block];
        left.CopyTo(padded, right.Length - 1);
        ref var own = ref MemoryMarshal.GetArrayDataReference(padded);
        var k = 0;
        for (; k + Block <= result.Length; k += Block)
        {
            Vector256<double> a = default, b = default, c = default, d = default;
            var end = Math.Min(right.Length, k + Block);
            for (var j = Math.Max(0, k - left.Length + 1); j < end; j++)
            {
                var at = (nuint)(k + right.Length - 1 - j);
                var weight = Vector256.Create(right[j]);
                a += Vector256.LoadUnsafe(ref own, at) * weight;
                b += Vector256.LoadUnsafe(ref own, at + 4) * weight;
                c += Vector256.LoadUnsafe(ref own, at + 8) * weight;
                d += Vector256.LoadUnsafe(ref own, at + 12) * weight;
            }

            a.CopyTo(result, k);
            b.CopyTo(result, k + 4);
            c.CopyTo(result, k + 8);
            d.CopyTo(result, k + 12);
        }

        for (; k < result.Length; k++)
        {
            for (var j = 0; j < right.Length; j++) result[k] += padded[k + right.Length - 1 - j] * right[j];
        }

        var least = result.Max() * Threshold;
        var first = 0;
        while (result[first] < least) first++;
        var last = result.Length - 1;
        while (result[last] < least) last--;
        if (first == 0 && last == result.Length - 1) return result;
        from += first;
        return result[first..(last + 1)];
    }
}
