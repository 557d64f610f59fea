namespace ScreenStats.Statistics.Comparison;

/// <summary>
/// The number of events in the first group given both margins of the table, at any odds ratio (the noncentral hypergeometric distribution),
/// seen from the observed number: sums of probabilities relative to its own, so neither scale nor size of the table matters.
/// </summary>
internal readonly struct ConditionalTable
{
    private readonly long events;
    private readonly long draws;
    private readonly long othersLeft;
    private readonly long observed;

    public ConditionalTable(TwoProportions counts)
    {
        events = counts.FirstSuccesses + counts.SecondSuccesses;
        draws = counts.FirstTrials;
        othersLeft = counts.SecondTrials - events;
        observed = counts.FirstSuccesses;
        Lowest = Math.Max(0, -othersLeft);
        Highest = Math.Min(events, draws);
    }

    public long Lowest { get; }

    public long Highest { get; }

    /// <summary>Sums over the numbers above the observed one, at an odds ratio given by its logarithm.</summary>
    public Moments Above(double logOddsRatio)
    {
        var ratio = Math.Exp(logOddsRatio);
        double term = 1, sum = 0, first = 0, second = 0;
        for (var k = observed; k < Highest; k++)
        {
            term *= (double)(events - k) / (k + 1) * ((double)(draws - k) / (othersLeft + k + 1)) * ratio;
            if (Added(term, k + 1 - observed, ref sum, ref first, ref second)) break;
        }

        return new Moments(sum, first, second);
    }

    /// <summary>Sums over the numbers below the observed one; distances count downwards.</summary>
    public Moments Below(double logOddsRatio)
    {
        var ratio = Math.Exp(-logOddsRatio);
        double term = 1, sum = 0, first = 0, second = 0;
        for (var k = observed; k > Lowest; k--)
        {
            term *= (double)k / (events - k + 1) * ((double)(othersLeft + k) / (draws - k + 1)) * ratio;
            if (Added(term, observed - k + 1, ref sum, ref first, ref second)) break;
        }

        return new Moments(sum, first, second);
    }

    // The terms rise to one top and then fall, so a term this small has only smaller ones after it.
    private static bool Added(double term, double distance, ref double sum, ref double first, ref double second)
    {
        sum += term;
        first += term * distance;
        second += term * distance * distance;
        return term < (1 + sum) * 1e-19 || double.IsInfinity(second);
    }

    /// <summary>Sums of probability, probability times distance and times its square, relative to the probability of the observed number.</summary>
    public readonly record struct Moments(double Sum, double First, double Second);
}
