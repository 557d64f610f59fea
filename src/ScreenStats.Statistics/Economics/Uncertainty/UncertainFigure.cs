using System.Globalization;
using ScreenStats.Statistics.Monitoring.Scans;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression.Ranks;

namespace ScreenStats.Statistics.Economics.Uncertainty;

/// <summary>A figure with what is known of it: a value, or a distribution made from a mean and a standard deviation, from a range, or from counts.</summary>
/// <remarks>
/// Matching of moments: beta with a = m (m (1 - m)/v - 1), b = (1 - m)(m (1 - m)/v - 1); gamma with shape m²/v and scale v/m; lognormal with log-variance
/// ln(1 + v/m²) and log-mean ln m less half of it. A standard deviation of 0 gives a fixed figure. Source: Briggs A, Sculpher M, Claxton K, Decision Modelling for
/// Health Economic Evaluation, 2006, chapter 4 (from memory).
/// </remarks>
public sealed record UncertainFigure
{
    /// <summary>A lower end below this part of the upper one is as good as 0.</summary>
    private const double LeastPart = 1e-6;

    /// <summary>A range narrower than this part of its lower end is that of a normal distribution.</summary>
    private const double NarrowPart = 1e-6;

    private UncertainFigure(UncertainFigureKind kind, double first, double second, double mean, double deviation)
    {
        Kind = kind;
        First = first;
        Second = second;
        Mean = mean;
        StandardDeviation = deviation;
    }

    /// <summary>The family.</summary>
    public UncertainFigureKind Kind { get; }

    /// <summary>Fixed: the value; uniform: the lower end; beta: the weight of successes; gamma: the shape; lognormal: the mean of the logarithm.</summary>
    public double First { get; }

    /// <summary>Fixed: 0; uniform: the upper end; beta: the weight of failures; gamma: the scale; lognormal: the standard deviation of the logarithm.</summary>
    public double Second { get; }

    /// <summary>The mean.</summary>
    public double Mean { get; }

    /// <summary>The standard deviation; 0 where the figure is fixed.</summary>
    public double StandardDeviation { get; }

    /// <summary>Whether the figure is known exactly.</summary>
    public bool IsFixed => Kind == UncertainFigureKind.Fixed;

    /// <summary>A figure known exactly.</summary>
    /// <param name="value">The value, from -1e15 to 1e15.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its domain.</exception>
    public static UncertainFigure Fixed(double value)
    {
        Guard.SignedAmount(value);
        return new UncertainFigure(UncertainFigureKind.Fixed, value, 0, value, 0);
    }

    /// <summary>Anywhere between two ends with the same chance.</summary>
    /// <param name="lower">The lower end, from -1e15 to 1e15.</param>
    /// <param name="upper">The upper end, not below the lower one.</param>
    /// <returns>The figure; fixed where both ends are the same.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static UncertainFigure Uniform(double lower, double upper)
    {
        Guard.SignedAmount(lower);
        Guard.SignedAmount(upper);
        if (upper < lower) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the lower end.");
        if (upper == lower) return Fixed(lower);
        return new UncertainFigure(UncertainFigureKind.Uniform, lower, upper, lower + ((upper - lower) / 2), (upper - lower) / Math.Sqrt(12));
    }

    /// <summary>A share known by a beta distribution, for instance from counts: successes and failures, each with what was known before.</summary>
    /// <param name="distribution">The distribution.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A weight is not above 0, as in a default value of the type.</exception>
    public static UncertainFigure Beta(BetaDistribution distribution)
    {
        var known = new BetaDistribution(distribution.Alpha, distribution.Beta);
        var mean = known.Mean;
        var variance = mean * (known.Beta / (known.Alpha + known.Beta)) / (known.Alpha + known.Beta + 1);
        return new UncertainFigure(UncertainFigureKind.Beta, known.Alpha, known.Beta, mean, Math.Sqrt(variance));
    }

    /// <summary>A share by its mean and standard deviation.</summary>
    /// <param name="mean">The mean, in [0, 1].</param>
    /// <param name="standardDeviation">The standard deviation: 0, or below the root of m (1 - m).</param>
    /// <returns>A beta distribution, or a fixed figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static UncertainFigure BetaByMoments(double mean, double standardDeviation)
    {
        Guard.Probability(mean);
        Guard.Amount(standardDeviation);
        if (standardDeviation == 0) return Fixed(mean);
        var weight = (mean * (1 - mean) / (standardDeviation * standardDeviation)) - 1;
        var (alpha, beta) = (mean * weight, (1 - mean) * weight);
        if (!(alpha > 0 && beta > 0) || !double.IsFinite(weight))
            throw new ArgumentOutOfRangeException(nameof(standardDeviation), standardDeviation, "The standard deviation of a share must be 0, or lie below the root of m (1 - m).");
        return new UncertainFigure(UncertainFigureKind.Beta, alpha, beta, mean, standardDeviation);
    }

    /// <summary>A share by its value and range.</summary>
    /// <param name="value">The value, in [0, 1] and inside the range.</param>
    /// <param name="lower">The lower end, in [0, 1].</param>
    /// <param name="upper">The upper end, in [0, 1].</param>
    /// <param name="confidence">The chance that the range holds the figure, in (0, 1).</param>
    /// <returns>
    /// The beta distribution with its mode at the value and an equal-tailed range of that width (<see cref="BetaDistribution.Matching"/>), whose mean is not the value
    /// unless the range is symmetrical; fixed where the range has no width.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static UncertainFigure BetaByRange(double value, double lower, double upper, double confidence = 0.95)
    {
        if (lower == upper && lower == value)
        {
            Guard.Probability(value);
            Guard.Confidence(confidence);
            return Fixed(value);
        }

        return Beta(BetaDistribution.Matching(value, lower, upper, confidence));
    }

    /// <summary>A cost, rate or time by its mean and standard deviation.</summary>
    /// <param name="mean">The mean, above 0 and at most 1e15; it may be 0 where the standard deviation is.</param>
    /// <param name="standardDeviation">The standard deviation, from 0 to a hundred times the mean.</param>
    /// <returns>A gamma distribution, or a fixed figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static UncertainFigure GammaByMoments(double mean, double standardDeviation)
    {
        if (!Spread(mean, standardDeviation)) return Fixed(mean);
        var ratio = mean / standardDeviation;
        var shape = ratio * ratio;
        return new UncertainFigure(UncertainFigureKind.Gamma, shape, mean / shape, mean, standardDeviation);
    }

    /// <summary>A cost, rate or time by its value and range.</summary>
    /// <param name="value">The value, inside the range.</param>
    /// <param name="lower">The lower end, 0 or more.</param>
    /// <param name="upper">The upper end, at most 1e15.</param>
    /// <param name="confidence">The chance that the range holds the figure, in (0, 1).</param>
    /// <returns>
    /// The gamma distribution that leaves equal chances beyond both ends: two figures can meet two, so both ends are met exactly and the mean is not the value in general.
    /// A lower end below a millionth of the upper one says nothing of the shape: then the mean is the value and the upper end is met exactly; where no gamma distribution has
    /// both (the upper end more than about 7 times the value at 0.95, or the value itself) the standard deviation is the width over twice the normal quantile (3.92 at 0.95).
    /// Fixed where the range has no width.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or a value of 0 with a range.</exception>
    public static UncertainFigure GammaByRange(double value, double lower, double upper, double confidence = 0.95)
    {
        Guard.Amount(lower);
        Guard.Amount(upper);
        if (upper < lower) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the lower end.");
        if (!(value >= lower && value <= upper)) throw new ArgumentOutOfRangeException(nameof(value), value, "The value must lie inside its range.");
        var deviation = (upper - lower) / (2 * Quantile.Normal(confidence));
        if (upper == lower) return GammaByMoments(value, 0);
        var tail = (1 - confidence) / 2;
        if (lower >= LeastPart * upper)
        {
            // Nearly no width: both ends are those of a normal distribution.
            if (upper - lower <= NarrowPart * lower) return GammaByMoments(lower + ((upper - lower) / 2), deviation);
            var (shape, scale) = GammaLimits.Both(lower, upper, tail);
            return new UncertainFigure(UncertainFigureKind.Gamma, shape, scale, shape * scale, Math.Sqrt(shape) * scale);
        }

        if (value > 0 && GammaLimits.Upper(upper / value, tail) is { } known) return new UncertainFigure(UncertainFigureKind.Gamma, known, value / known, value, value / Math.Sqrt(known));
        if (!(deviation <= 100 * value))
            throw new ArgumentOutOfRangeException(nameof(upper), upper, "The range is too wide for so small a value: state a value above 0 that is at least a four-hundredth of its width.");
        return GammaByMoments(value, deviation);
    }

    /// <summary>A ratio by its mean and standard deviation.</summary>
    /// <param name="mean">The mean, above 0 and at most 1e15; it may be 0 where the standard deviation is.</param>
    /// <param name="standardDeviation">The standard deviation, from 0 to a hundred times the mean.</param>
    /// <returns>A lognormal distribution, or a fixed figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static UncertainFigure LognormalByMoments(double mean, double standardDeviation)
    {
        if (!Spread(mean, standardDeviation)) return Fixed(mean);
        var ratio = standardDeviation / mean;
        var variance = Precise.LogOnePlus(ratio * ratio);
        return new UncertainFigure(UncertainFigureKind.Lognormal, Math.Log(mean) - (variance / 2), Math.Sqrt(variance), mean, standardDeviation);
    }

    /// <summary>A ratio by its range, whose ends lie equally far from the middle as factors.</summary>
    /// <param name="lower">The lower end, from 1e-15.</param>
    /// <param name="upper">The upper end, at most 1e15 and at most a million times the lower one.</param>
    /// <param name="confidence">The chance that the range holds the figure, in (0, 1), with equal chances on both sides.</param>
    /// <returns>The lognormal distribution with these quantiles; its median is the root of the product of the ends. Fixed where they are the same.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static UncertainFigure LognormalByRange(double lower, double upper, double confidence = 0.95)
    {
        if (!(lower is >= 1e-15 and <= 1e15)) throw new ArgumentOutOfRangeException(nameof(lower), lower, "The lower end must be a number from 1e-15 to 1e15.");
        if (!(upper >= lower && upper <= Math.Min(1e15, 1e6 * lower)))
            throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must lie between the lower end and a million times that, and be at most 1e15.");
        var quantile = Quantile.Normal(confidence);
        if (lower == upper) return Fixed(lower);
        var log = (Math.Log(lower) + Math.Log(upper)) / 2;
        var spread = Math.Log(upper / lower) / (2 * quantile);
        var mean = Math.Exp(log + (spread * spread / 2));
        var deviation = mean * Math.Sqrt(Precise.ExponentialMinusOne(spread * spread));
        if (!(deviation <= 1e15)) throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A range so wide with so little confidence leaves no usable distribution.");
        return new UncertainFigure(UncertainFigureKind.Lognormal, log, spread, mean, deviation);
    }

    /// <summary>The value below which the figure lies with a probability.</summary>
    /// <param name="probability">The probability, in (0, 1).</param>
    /// <returns>The quantile, relative error below 1e-9; a fixed figure is its own quantile.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The probability is outside (0, 1).</exception>
    public double QuantileAt(double probability)
    {
        Guard.Confidence(probability);
        var upperTail = probability > 0.5;
        var tail = upperTail ? 1 - probability : probability;
        return Kind switch
        {
            UncertainFigureKind.Fixed => First,
            UncertainFigureKind.Uniform => Math.Min(First + (probability * (Second - First)), Second),
            UncertainFigureKind.Beta => LogitScale.Fraction(TailEquation.BetaQuantileLogit(First, Second, tail, upperTail)),
            UncertainFigureKind.Gamma => Second * GammaTail.Quantile(First, tail, upperTail),
            _ => Math.Exp(First + (probability == 0.5 ? 0 : (upperTail ? 1 : -1) * Second * Quantile.NormalTail(tail))),
        };
    }

    /// <summary>The range that holds the figure with a probability, with equal chances on both sides.</summary>
    /// <param name="confidence">The probability, in (0, 1).</param>
    /// <returns>Both quantiles.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The probability is outside (0, 1).</exception>
    public Interval Range(double confidence = 0.95)
    {
        Guard.Confidence(confidence);
        var (lower, upper) = (QuantileAt((1 - confidence) / 2), QuantileAt(1 - ((1 - confidence) / 2)));
        return new Interval(Math.Min(lower, upper), upper);
    }

    /// <summary>The distribution in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kind}({First}, {Second})");

    /// <summary>One value, from a stream of its own.</summary>
    internal double Draw(ReplicateStream stream)
    {
        if (IsFixed) return First;
        var random = new RandomDraw(stream);
        return Kind switch
        {
            UncertainFigureKind.Uniform => Math.Min(First + (random.Uniform() * (Second - First)), Second),
            UncertainFigureKind.Beta => LogitScale.Fraction(random.LogGamma(First) - random.LogGamma(Second)),
            UncertainFigureKind.Gamma => Second * Math.Exp(random.LogGamma(First)),
            _ => Math.Exp(First + (Second * random.Normal())),
        };
    }

    /// <summary>Whether there is a spread at all; refuses one that no distribution here has.</summary>
    private static bool Spread(double mean, double standardDeviation)
    {
        Guard.Amount(mean);
        if (!(standardDeviation >= 0 && standardDeviation <= 100 * mean))
            throw new ArgumentOutOfRangeException(nameof(standardDeviation), standardDeviation, "The standard deviation must lie between 0 and a hundred times the mean.");
        return standardDeviation > mean * 1e-9;
    }
}
