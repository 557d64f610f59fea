using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression;

namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>
/// The forward and backward sums over a lattice of logits. The distance of its points follows the narrowest distribution that the data and
/// sigma can leave; each period has its own window on it.
/// </summary>
internal sealed class LevelGrid
{
    /// <summary>Lattice points to the narrowest standard deviation where figures are read off.</summary>
    public const double Dense = 4.5;

    /// <summary>The same where only a likelihood, or one of many parts of an average, is wanted.</summary>
    public const double Sparse = 3;

    private const int MostPoints = 200_000;

    // In a search: counts that a lattice this much wider than the steps cannot hold refute them.
    private const double MuchDenser = 10;

    // A step that the period before makes less likely than this is seen through the tails of its distribution, which a lattice wider than the steps does not hold.
    private const double Doubtful = 1e-6;

    // The same for what was cut off beyond the windows.
    private const double Lost = 1e-8;

    private readonly LevelData data;
    private readonly double sigma;
    private readonly double low;
    private readonly double step;
    private readonly double negligible;
    private readonly bool fine;
    private readonly double[] soft;
    private readonly double[] rates;
    private readonly Dictionary<long, LevelKernel> kernels = [];
    private readonly (int First, double[] Values)[] forward;

    private LevelGrid(LevelData data, double sigma, double low, double high, double step, bool fine, bool sparse)
    {
        (this.data, this.sigma, this.low, this.step, this.fine) = (data, sigma, low, step, fine);
        negligible = fine ? 1e-40 : sparse ? 1e-13 : 1e-16;
        var points = (int)Math.Ceiling((high - low) / step) + 1;
        (soft, rates) = (new double[points], new double[points]);
        for (var i = 0; i < points; i++)
        {
            var logit = low + (step * i);
            soft[i] = LogisticRegression.SoftPlus(logit);
            rates[i] = LogitScale.Fraction(logit);
        }

        forward = new (int, double[])[data.Periods.Length];
    }

    /// <summary>The logarithm of the likelihood, binomial coefficients included.</summary>
    public double LogLikelihood { get; private set; }

    /// <summary>The grid with its forward sums; null where it would take too many points, or no path leads through the counts.</summary>
    public static LevelGrid? Of(LevelData data, double sigma, double points = Dense)
    {
        var (low, high) = data.Range(sigma);
        var steady = sigma == 0 ? double.PositiveInfinity : data.MostInformation * Math.Sqrt(1 + (4 / (data.MostInformation * sigma * sigma)));
        var step = Math.Min(0.4, 1 / Math.Sqrt(Math.Min(steady, data.AllInformation)) / points);
        if ((high - low) / step > MostPoints) return null;
        var grid = new LevelGrid(data, sigma, low, high, step, fine: sigma == 0 || sigma >= 1.5 * step, points < Dense);
        if (grid.Forward()) return grid;
        if (sigma == 0 || grid.fine || (high - low) / (sigma / 1.5) > MostPoints || (points < Dense && sigma * MuchDenser < 1.5 * step)) return null;
        grid = new LevelGrid(data, sigma, low, high, sigma / 1.5, fine: true, sparse: false);
        return grid.Forward() ? grid : null;
    }

    /// <summary>The distribution of each period by the periods up to it; null where they do not bound it.</summary>
    public LevelMarginal?[] Filtered()
    {
        var (events, others) = (data.Start.Events, data.Start.Others);
        var filtered = new LevelMarginal?[forward.Length];
        for (var t = 0; t < forward.Length; t++)
        {
            events += data.Periods[t].Events;
            others += data.Periods[t].Trials - data.Periods[t].Events;
            if (data.Start.Mean is not null || (events > 0 && others > 0)) filtered[t] = Marginal(forward[t].First, forward[t].Values);
        }

        return filtered;
    }

    /// <summary>The distribution of each period by all periods.</summary>
    public LevelMarginal[] Smoothed()
    {
        var smoothed = new LevelMarginal[forward.Length];
        var (first, message) = (forward[^1].First, Filled(forward[^1].Values.Length));
        for (var t = forward.Length - 1; t >= 0; t--)
        {
            var (begin, values) = forward[t];
            if (t < forward.Length - 1)
            {
                Weigh(t + 1, first, message);
                message = Moved(first, message, Kernel(data.Gaps[t + 1]), begin, values.Length);
                first = begin;
            }

            var product = new double[values.Length];
            double top = 0;
            for (var i = 0; i < product.Length; i++) top = Math.Max(top, product[i] = values[i] * message[i]);
            for (var i = 0; i < message.Length; i++) message[i] /= top;
            smoothed[t] = Marginal(begin, product);
        }

        return smoothed;
    }

    /// <summary>The mean and the mean square of the rate in the last period.</summary>
    public (double Mean, double Square) RateMoments()
    {
        var (first, values) = forward[^1];
        double sum = 0, mean = 0, square = 0;
        for (var i = 0; i < values.Length; i++)
        {
            sum += values[i];
            mean += values[i] * rates[first + i];
            square += values[i] * rates[first + i] * rates[first + i];
        }

        return (mean / sum, square / sum);
    }

    private static double[] Filled(int length)
    {
        var ones = new double[length];
        Array.Fill(ones, 1);
        return ones;
    }

    private LevelMarginal Marginal(int first, double[] values)
    {
        var (left, right) = Window(values, values.Max() * 1e-15);
        return new LevelMarginal(low + (step * (first + left)), step, values[left..(right + 1)], rates.AsSpan(first + left, right - left + 1));
    }

    private LevelKernel Kernel(long gap)
    {
        if (!kernels.TryGetValue(gap, out var kernel)) kernels[gap] = kernel = LevelKernel.Of(sigma * Math.Sqrt(gap) / step);
        return kernel;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private bool Forward()
    {
        var values = new double[soft.Length];
        var first = 0;
        for (var i = 0; i < values.Length; i++) values[i] = data.Start.LogDensity(low + (step * i));
        var start = values.Max();
        for (var i = 0; i < values.Length; i++) values[i] = Math.Exp(values[i] - start);
        var log = start + data.Coefficients;

        // What was cut off on either side: later counts must not make it count again, unless steps have filled it up since.
        Span<int> cut = [-1, -1];
        Span<double> lost = [0, 0];
        for (var t = 0; t < forward.Length; t++)
        {
            if (t > 0)
            {
                var kernel = Kernel(data.Gaps[t]);
                var begin = Math.Max(0, first - kernel.Reach);
                var end = Math.Min(soft.Length, first + values.Length + kernel.Reach);
                values = Moved(first, values, kernel, begin, end - begin);
                first = begin;
            }

            var before = t == 0 || fine ? null : (double[])values.Clone();
            var weight = Weigh(t, first, values);
            log += weight;
            var (at, top, sum) = (0, 0.0, 0.0);
            for (var i = 0; i < values.Length; i++)
            {
                sum += values[i];
                if (values[i] > top) (at, top) = (i, values[i]);
            }

            if (!(sum > 0)) return false;
            if (before is not null && before[at] < Doubtful * before.Max()) return false;
            for (var side = 0; side < 2; side++)
            {
                if (cut[side] < 0) continue;
                lost[side] *= Math.Exp((data.Periods[t].Events * (low + (step * cut[side]))) - (data.Periods[t].Trials * soft[cut[side]]) - weight);
                var place = cut[side] - first;
                if (place >= 0 && place < values.Length && values[place] > 100 * lost[side]) cut[side] = -1;
                else if (lost[side] > Lost * top) return false;
            }

            log += Math.Log(sum * step);
            var (left, right) = Window(values, top * negligible);
            if (first + left > 0 && (cut[0] < 0 || values[left] >= lost[0])) (cut[0], lost[0]) = (first + left, values[left]);
            if (first + right < soft.Length - 1 && (cut[1] < 0 || values[right] >= lost[1])) (cut[1], lost[1]) = (first + right, values[right]);
            (lost[0], lost[1]) = (lost[0] / (sum * step), lost[1] / (sum * step));
            if (left > 0 || right < values.Length - 1) values = values[left..(right + 1)];
            first += left;
            for (var i = 0; i < values.Length; i++) values[i] /= sum * step;
            forward[t] = (first, values);
        }

        LogLikelihood = log;
        return true;
    }

    /// <summary>Multiplies by the likelihood of a period's counts over its highest in the window, and gives the logarithm of that.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double Weigh(int t, int first, double[] values)
    {
        var (events, trials) = (data.Periods[t].Events, data.Periods[t].Trials);
        if (trials == 0) return 0;
        var logs = new double[values.Length];
        var top = double.NegativeInfinity;
        for (var i = 0; i < logs.Length; i++) top = Math.Max(top, logs[i] = (events * (low + (step * (first + i)))) - (trials * soft[first + i]));
        for (var i = 0; i < logs.Length; i++) values[i] *= Math.Exp(logs[i] - top);
        return top;
    }

    private static (int Left, int Right) Window(double[] values, double least)
    {
        var (left, right) = (0, values.Length - 1);
        while (left < right && values[left] < least) left++;
        while (right > left && values[right] < least) right--;
        return (left, right);
    }

    /// <summary>Values on one window after a step, on another; what rounding leaves below 0 is 0.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double[] Moved(int first, double[] values, LevelKernel kernel, int begin, int length)
    {
        var moved = new double[length];
        for (var i = 0; i < length; i++)
        {
            var centre = begin + i - first;
            var from = Math.Max(0, centre - kernel.Reach);
            var to = Math.Min(values.Length - 1, centre + kernel.Reach);
            if (to >= from) moved[i] = Math.Max(0, Product(values.AsSpan(from, to - from + 1), kernel.Weights.AsSpan(kernel.Reach + from - centre, to - from + 1)));
        }

        return moved;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double Product(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        // Sixteen numbers at a time on every machine, whatever its registers hold, so that sums are the same on all.
        ref var x = ref MemoryMarshal.GetReference(a);
        ref var y = ref MemoryMarshal.GetReference(b);
        var (first, second, third, fourth) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
        nuint i = 0;
        var length = (nuint)Math.Min(a.Length, b.Length);
        for (; i + 16 <= length; i += 16)
        {
            first += Vector256.LoadUnsafe(ref x, i) * Vector256.LoadUnsafe(ref y, i);
            second += Vector256.LoadUnsafe(ref x, i + 4) * Vector256.LoadUnsafe(ref y, i + 4);
            third += Vector256.LoadUnsafe(ref x, i + 8) * Vector256.LoadUnsafe(ref y, i + 8);
            fourth += Vector256.LoadUnsafe(ref x, i + 12) * Vector256.LoadUnsafe(ref y, i + 12);
        }

        for (; i + 4 <= length; i += 4) first += Vector256.LoadUnsafe(ref x, i) * Vector256.LoadUnsafe(ref y, i);
        var all = first + second + (third + fourth);
        var sum = all[0] + all[1] + (all[2] + all[3]);
        for (; i < length; i++) sum += a[(int)i] * b[(int)i];
        return sum;
    }
}
