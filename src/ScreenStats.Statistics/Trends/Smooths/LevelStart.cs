using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression;

namespace ScreenStats.Statistics.Trends.Smooths;

/// <summary>What is taken as known, before any count, of the logit of the rate in the first period.</summary>
public sealed record LevelStart
{
    private LevelStart(double events, double others, double? mean, double? deviation)
    {
        Events = events;
        Others = others;
        Mean = mean;
        Deviation = deviation;
    }

    /// <summary>Nothing: each logit alike. Needs an event and a trial without one somewhere in the data.</summary>
    public static LevelStart Diffuse { get; } = new(0, 0, null, null);

    /// <summary>Half an event in one trial: the rate has a beta distribution with weights 1/2 and 1/2. Answers also where no event, or nothing else, was seen.</summary>
    public static LevelStart HalfAnEvent { get; } = new(0.5, 0.5, null, null);

    /// <summary>As if so many events and trials without one had been seen before: the weights of a beta distribution; 0 where the logit is diffuse or normal.</summary>
    public double Events { get; }

    /// <summary>Trials without an event that count as seen before.</summary>
    public double Others { get; }

    /// <summary>The mean of a normal logit; null where it is not normal.</summary>
    public double? Mean { get; }

    /// <summary>The standard deviation of a normal logit; null where it is not normal.</summary>
    public double? Deviation { get; }

    /// <summary>The rate of the first period has a beta distribution.</summary>
    /// <param name="events">Its first weight, finite, above 0.</param>
    /// <param name="others">Its second weight, finite, above 0.</param>
    /// <returns>The start.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A weight outside its domain.</exception>
    public static LevelStart Beta(double events, double others)
    {
        Guard.Finite(events);
        Guard.Finite(others);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(events);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(others);
        return new LevelStart(events, others, null, null);
    }

    /// <summary>The logit of the rate of the first period has a normal distribution.</summary>
    /// <param name="mean">Its mean, within -50 and 50.</param>
    /// <param name="deviation">Its standard deviation, finite, above 0 and at most 50.</param>
    /// <returns>The start.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static LevelStart Normal(double mean, double deviation)
    {
        if (!(Math.Abs(mean) <= 50)) throw new ArgumentOutOfRangeException(nameof(mean), mean, "The mean of a logit lies between -50 and 50.");
        if (!(deviation > 0 && deviation <= 50)) throw new ArgumentOutOfRangeException(nameof(deviation), deviation, "The standard deviation of a logit lies above 0 and is at most 50.");
        return new LevelStart(0, 0, mean, deviation);
    }

    /// <summary>Whether nothing is taken as known.</summary>
    internal bool IsDiffuse => Mean is null && Events == 0;

    /// <summary>The logarithm of the density of the logit; of a diffuse one 0.</summary>
    internal double LogDensity(double logit)
    {
        if (Mean is { } mean && Deviation is { } deviation)
        {
            var z = (logit - mean) / deviation;
            return (-0.5 * z * z) - Math.Log(deviation) - (0.5 * Math.Log(2 * Math.PI));
        }

        if (Events == 0) return 0;
        return -(Events * LogisticRegression.SoftPlus(-logit)) - (Others * LogisticRegression.SoftPlus(logit)) - LogBeta(Events, Others);
    }

    /// <summary>ln B(a, b) = ln Gamma(a) + ln Gamma(b) - ln Gamma(a + b), from the Stirling remainders of a, b and a + b.</summary>
    private static double LogBeta(double a, double b) =>
        Binomial.StirlingRemainder(a) + Binomial.StirlingRemainder(b) - Binomial.StirlingRemainder(a + b)
        + ((a - 0.5) * Math.Log(a / (a + b))) + ((b - 0.5) * Math.Log(b / (a + b))) - (0.5 * Math.Log((a + b) / (2 * Math.PI)));
}
