using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Proportions;

/// <summary>How often the interval of a method holds the true rate: exactly, by summing the binomial over all that can be counted.</summary>
/// <remarks>Make one for a method, a number of trials and a confidence, and ask it for as many rates as wanted: the intervals are computed once.</remarks>
public sealed class IntervalCoverage
{
    private readonly double[] lower;
    private readonly double[] upper;

    private IntervalCoverage(IntervalMethod method, int trials, double confidence)
    {
        Method = method;
        Trials = trials;
        Confidence = confidence;
        lower = new double[trials + 1];
        upper = new double[trials + 1];
        for (var x = 0; x <= trials; x++)
        {
            var interval = ProportionInterval.Of(method, x, trials, confidence).Interval ?? default;
            (lower[x], upper[x]) = (interval.Lower, interval.Upper);
        }
    }

    /// <summary>The method.</summary>
    public IntervalMethod Method { get; }

    /// <summary>The number of trials.</summary>
    public int Trials { get; }

    /// <summary>The confidence the intervals claim.</summary>
    public double Confidence { get; }

    /// <summary>Computes the intervals of all counts from 0 to the trials.</summary>
    /// <param name="method">The method.</param>
    /// <param name="trials">Trials, 1 to 1,000,000.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>What answers for any rate.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An unknown method, or trials or a confidence outside their domain.</exception>
    public static IntervalCoverage Of(IntervalMethod method, int trials, double confidence = 0.95)
    {
        if (trials is < 1 or > 1_000_000) throw new ArgumentOutOfRangeException(nameof(trials), trials, "The trials must be 1 to 1,000,000.");
        Guard.Confidence(confidence);
        return new IntervalCoverage(method, trials, confidence);
    }

    /// <summary>The chance that the interval holds the rate, its ends included.</summary>
    /// <param name="rate">The true rate, in [0, 1].</param>
    /// <returns>A probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is outside [0, 1].</exception>
    /// <remarks>Σ P(x) over the counts x whose interval holds the rate; absolute error below 1e-13.</remarks>
    public double At(double rate) => Sum(rate, x => lower[x] <= rate && rate <= upper[x] ? 1 : 0);

    /// <summary>The mean width of the interval.</summary>
    /// <param name="rate">The true rate, in [0, 1].</param>
    /// <returns>Σ P(x) (upper - lower).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rate is outside [0, 1].</exception>
    public double WidthAt(double rate) => Sum(rate, x => upper[x] - lower[x]);

    // Outwards from the likeliest count, each probability by its ratio to the one before, until what is left does not count.
    private double Sum(double rate, Func<int, double> value)
    {
        Guard.Probability(rate);
        if (rate is 0 or 1) return value(rate == 0 ? 0 : Trials);
        var mode = (int)Math.Min(Trials, Math.Floor((Trials + 1) * rate));
        var odds = rate / (1 - rate);
        var top = Binomial.Probability(mode, Trials, rate, 1 - rate);
        var sum = top * value(mode);
        var chance = top;
        for (var x = mode; x < Trials && chance > 1e-18; x++)
        {
            chance *= (double)(Trials - x) / (x + 1) * odds;
            sum += chance * value(x + 1);
        }

        chance = top;
        for (var x = mode; x > 0 && chance > 1e-18; x--)
        {
            chance *= x / (odds * (Trials - x + 1));
            sum += chance * value(x - 1);
        }

        return sum;
    }
}
