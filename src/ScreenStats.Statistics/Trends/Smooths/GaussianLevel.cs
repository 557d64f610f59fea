using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>A series of numbers as a level that wanders by normal steps, seen through normal noise.</summary>
public static class GaussianLevel
{
    // Logarithms of the ratio of the two variances that are searched.
    private const int Least = -35;
    private const int Most = 35;

    /// <summary>The smooth with the most likely variances.</summary>
    /// <param name="values">The values, one a period, in order of time; null where one is missing.</param>
    /// <param name="confidence">The confidence of the limits, in (0, 1).</param>
    /// <returns>The smooth; a reason where there are fewer than three values or they are all alike.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value that is not finite, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// y = m + e, m' = m + u, with e and u normal; the first level is diffuse, exactly, so that the first value is spent on it. The noise is
    /// concentrated out; the slope of the likelihood over the ratio of the variances is searched for all its roots. Either variance may be 0.
    /// The limits take the variances as known and so are somewhat short in short series. Source: Durbin J, Koopman SJ, Time Series Analysis by
    /// State Space Methods, 2001, chapter 2.
    /// </remarks>
    public static GaussianLevelFit MaximumLikelihood(IReadOnlyList<double?> values, double confidence = 0.95)
    {
        Check(values, confidence);
        var seen = values.Where(value => value is not null).Select(value => value!.Value).ToArray();
        GaussianLevelFit Without(UndefinedReason reason) => new([], seen.Length, null, null, null, confidence, reason);
        if (seen.Length < 3) return Without(UndefinedReason.FewerThanThreePeriods);
        if (seen.All(value => value == seen[0])) return Without(UndefinedReason.PointsAllAlike);

        // The two ends: a level that never moves, and values without noise.
        var still = Concentrated(values, 1, 0);
        var best = (Log: still.Log, Noise: still.Scale, Step: 0.0);
        var exact = Concentrated(values, 0, 1);
        if (exact.Log > best.Log) best = (exact.Log, 0, exact.Scale);
        double Slope(double logRatio) => Concentrated(values, 1, Math.Exp(logRatio)).Slope;
        var before = Slope(Least);
        for (var at = Least + 1; at <= Most; at++)
        {
            var slope = Slope(at);
            if (before > 0 && slope <= 0)
            {
                var ratio = Math.Exp(Root.Between(Slope, at - 1, at));
                var found = Concentrated(values, 1, ratio);
                if (found.Log > best.Log + 1e-12) best = (found.Log, found.Scale, ratio * found.Scale);
            }

            before = slope;
        }

        return Smooth(values, best.Noise, best.Step, confidence);
    }

    /// <summary>The smooth with variances given.</summary>
    /// <param name="values">The values, one a period, in order of time; null where one is missing.</param>
    /// <param name="noiseVariance">The variance of a value around its level, finite, 0 or more.</param>
    /// <param name="levelVariance">The variance of a step of the level, finite, 0 or more; not both 0.</param>
    /// <param name="confidence">The confidence of the limits, in (0, 1).</param>
    /// <returns>The smooth; a reason where there is no value.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>The first level is diffuse; the filter of Kalman and the fixed-interval smoother of Rauch, Tung and Striebel. Source: as <see cref="MaximumLikelihood"/>.</remarks>
    public static GaussianLevelFit Smooth(IReadOnlyList<double?> values, double noiseVariance, double levelVariance, double confidence = 0.95)
    {
        Check(values, confidence);
        CheckVariance(noiseVariance, nameof(noiseVariance));
        CheckVariance(levelVariance, nameof(levelVariance));
        if (noiseVariance + levelVariance == 0) throw new ArgumentOutOfRangeException(nameof(levelVariance), levelVariance, "The two variances must not both be 0.");
        var n = values.Count;
        var first = Enumerable.Range(0, n).FirstOrDefault(i => values[i] is not null, -1);
        if (first < 0) return new GaussianLevelFit([], 0, null, null, null, confidence, UndefinedReason.NoValues);
        var (mean, variance) = (new double[n], new double[n]);
        (mean[first], variance[first]) = (values[first]!.Value, noiseVariance);
        double log = 0;
        for (var i = first + 1; i < n; i++)
        {
            (mean[i], variance[i]) = (mean[i - 1], variance[i - 1] + levelVariance);
            if (values[i] is not { } value) continue;
            var total = variance[i] + noiseVariance;
            var error = value - mean[i];
            log -= 0.5 * (Math.Log(2 * Math.PI * total) + (error * error / total));
            mean[i] += variance[i] / total * error;
            variance[i] *= noiseVariance / total;
        }

        var (smooth, smoothVariance) = ((double[])mean.Clone(), (double[])variance.Clone());
        for (var i = n - 2; i >= 0; i--)
        {
            var ahead = variance[i] + levelVariance;
            if (i < first) (smooth[i], smoothVariance[i]) = (smooth[i + 1], smoothVariance[i + 1] + levelVariance);
            else if (ahead > 0)
            {
                var gain = variance[i] / ahead;
                smooth[i] += gain * (smooth[i + 1] - mean[i]);
                smoothVariance[i] += gain * gain * (smoothVariance[i + 1] - ahead);
            }
        }

        var z = Quantile.Normal(confidence);
        Interval Band(double m, double v) => new(m - (z * Math.Sqrt(v)), m + (z * Math.Sqrt(v)));
        return new GaussianLevelFit(
            [.. Enumerable.Range(0, n).Select(i => new GaussianLevelPoint(
                values[i], i < first ? null : mean[i], i < first ? null : variance[i], i < first ? null : Band(mean[i], variance[i]),
                smooth[i], Math.Max(0, smoothVariance[i]), Band(smooth[i], Math.Max(0, smoothVariance[i]))))],
            values.Count(value => value is not null), noiseVariance, levelVariance, log, confidence, null);
    }

    /// <summary>The likelihood with the scale of both variances at its best, and its slope over the logarithm of the step's.</summary>
    private static (double Log, double Scale, double Slope) Concentrated(IReadOnlyList<double?> values, double noise, double step)
    {
        double mean = 0, variance = 0, meanSlope = 0, varianceSlope = 0, squares = 0, squaresSlope = 0, logs = 0, logsSlope = 0;
        var used = -1;
        foreach (var value in values)
        {
            if (used >= 0) (variance, varianceSlope) = (variance + step, varianceSlope + step);
            if (value is not { } y) continue;
            if (++used == 0)
            {
                (mean, variance) = (y, noise);
                continue;
            }

            var total = variance + noise;
            var error = y - mean;
            var gain = variance / total;
            squares += error * error / total;
            squaresSlope -= ((2 * error * meanSlope) + (error * error / total * varianceSlope)) / total;
            logs += Math.Log(total);
            logsSlope += varianceSlope / total;
            mean += gain * error;
            meanSlope += (noise / (total * total) * varianceSlope * error) - (gain * meanSlope);
            variance *= noise / total;
            varianceSlope *= noise / total * (noise / total);
        }

        var scale = squares / used;
        return (-0.5 * ((used * (Math.Log(2 * Math.PI * scale) + 1)) + logs), scale, -0.5 * ((used * squaresSlope / squares) + logsSlope));
    }

    private static void Check(IReadOnlyList<double?> values, double confidence)
    {
        ArgumentNullException.ThrowIfNull(values);
        Guard.Confidence(confidence);
        foreach (var value in values)
        {
            if (value is { } figure) Guard.Finite(figure, nameof(values));
        }
    }

    private static void CheckVariance(double variance, string name)
    {
        if (!(variance >= 0) || !double.IsFinite(variance)) throw new ArgumentOutOfRangeException(name, variance, "A variance is finite and not below 0.");
    }
}
