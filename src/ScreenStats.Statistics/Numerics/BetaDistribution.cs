using System.Globalization;

namespace ScreenStats.Statistics.Numerics;

/// <summary>A beta distribution: what is known of a share, by the weight of successes and of failures.</summary>
public readonly record struct BetaDistribution
{
    /// <summary>Makes a distribution.</summary>
    /// <param name="alpha">The weight of successes, finite and above 0.</param>
    /// <param name="beta">The weight of failures, finite and above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A weight that is not finite or not above 0.</exception>
    public BetaDistribution(double alpha, double beta)
    {
        if (!(alpha > 0) || !double.IsFinite(alpha)) throw new ArgumentOutOfRangeException(nameof(alpha), alpha, "A weight of a beta distribution is a finite number above 0.");
        if (!(beta > 0) || !double.IsFinite(beta)) throw new ArgumentOutOfRangeException(nameof(beta), beta, "A weight of a beta distribution is a finite number above 0.");
        Alpha = alpha;
        Beta = beta;
    }

    /// <summary>Every share equally likely: Beta(1, 1).</summary>
    public static BetaDistribution Uniform { get; } = new(1, 1);

    /// <summary>The weight of successes.</summary>
    public double Alpha { get; }

    /// <summary>The weight of failures.</summary>
    public double Beta { get; }

    /// <summary>The mean, alpha / (alpha + beta).</summary>
    public double Mean => Alpha / (Alpha + Beta);

    /// <summary>The share that leaves an equal part of the rest above and below.</summary>
    /// <param name="confidence">The probability inside, in (0, 1).</param>
    /// <returns>Both quantiles, relative error below 1e-10 from either side.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public Interval EqualTailed(double confidence)
    {
        Guard.Confidence(confidence);
        var tail = (1 - confidence) / 2;
        return new Interval(
            LogitScale.Fraction(TailEquation.BetaQuantileLogit(Alpha, Beta, tail, upperTail: false)),
            LogitScale.Fraction(TailEquation.BetaQuantileLogit(Alpha, Beta, tail, upperTail: true)));
    }

    /// <summary>The distribution that a value with an interval stands for.</summary>
    /// <param name="value">The value, in [0, 1] and inside the interval.</param>
    /// <param name="lower">The lower end, in [0, 1] and below <paramref name="upper"/>.</param>
    /// <param name="upper">The upper end, in [0, 1].</param>
    /// <param name="confidence">The confidence of that interval, in (0, 1).</param>
    /// <returns>A distribution with both weights at least 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// The one with its mode at the value whose equal-tailed interval at that confidence is as wide as the stated one: what is known, from a
    /// uniform start, after v n successes and (1 - v) n failures, with n solved for. A published value is a count over a count, the mode
    /// and not the mean of what the counts say. An interval wider than the uniform distribution's gives the uniform one. A value of 1
    /// (or 0) is read as the n of n (0 of n) whose Clopper-Pearson limit the other end is.
    /// </remarks>
    public static BetaDistribution Matching(double value, double lower, double upper, double confidence = 0.95)
    {
        Guard.Probability(value);
        Guard.Probability(lower);
        Guard.Probability(upper);
        Guard.Confidence(confidence);
        if (lower > value) throw new ArgumentOutOfRangeException(nameof(lower), lower, "The lower end must not lie above the value.");
        if (upper < value) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the value.");
        if (lower == upper) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must lie above the lower end.");
        if (value is <= 0 or >= 1)
        {
            // n of n has the exact lower limit (alpha / 2)^(1/n); 0 of n mirrors it.
            var limit = value >= 1 ? Math.Log(lower) : Precise.LogOnePlus(-upper);
            var trials = double.IsFinite(limit) ? Math.Max(1, Math.Log((1 - confidence) / 2) / limit) : 1;
            return value >= 1 ? new BetaDistribution(trials + 1, 1) : new BetaDistribution(1, trials + 1);
        }

        var width = upper - lower;
        return width >= confidence ? Uniform : Of(value, Trials(value, width, confidence));
    }

    /// <summary>The distribution in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"Beta({Alpha}, {Beta})");

    private static BetaDistribution Of(double mode, double trials) => new((mode * trials) + 1, ((1 - mode) * trials) + 1);

    /// <summary>The trials at which the equal-tailed interval has a width, by false position on the logarithm of both.</summary>
    private static double Trials(double mode, double width, double confidence)
    {
        double Excess(double logTrials) => Math.Log(Of(mode, Math.Exp(logTrials)).EqualTailed(confidence).Width / width);

        var z = Quantile.Normal(confidence);
        var normal = mode * (1 - mode) * 4 * z * z / (width * width);

        // With ten million events on the rarer side the normal limit is good to the eighth digit, and the beta function slow.
        if (mode * (1 - mode) * normal > 1e7) return normal;
        var low = Math.Log(Math.Max(1e-3, normal));
        var high = low;
        double atLow = Excess(low), atHigh = atLow;
        while (atLow < 0 && low > -40) (low, atLow) = (low - 1, Excess(low - 1));
        while (atHigh > 0 && high < 80) (high, atHigh) = (high + 1, Excess(high + 1));
        for (var step = 0; step < 100 && high - low > 1e-14 * Math.Abs(high); step++)
        {
            var next = ((low * atHigh) - (high * atLow)) / (atHigh - atLow);
            if (!(next > low && next < high)) next = (low + high) / 2;
            var at = Excess(next);
            if (Math.Abs(at) < 1e-13) return Math.Exp(next);

            // The end that stays is given half its weight, so that it moves next time (the Illinois rule).
            if (at > 0) (low, atLow, atHigh) = (next, at, atHigh / 2);
            else (high, atHigh, atLow) = (next, at, atLow / 2);
        }

        return Math.Exp((low + high) / 2);
    }
}
