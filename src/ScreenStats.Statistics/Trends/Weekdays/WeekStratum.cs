using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.Weekdays;

/// <summary>The days of one week that are compared: what their odds, relative to each other, make of the week's events.</summary>
/// <param name="days">The places of the days among all days compared.</param>
/// <param name="events">Events of each.</param>
/// <param name="trials">Trials of each, more than 0.</param>
/// <param name="conditional">Whether the events of the week are taken as given; else the week has a term of its own, at its most likely value.</param>
internal sealed class WeekStratum(int[] days, double[] events, double[] trials, bool conditional)
{
    private readonly double total = events.Sum();
    private double level = double.NaN;

    public int[] Days => days;

    public bool IsConditional => conditional;

    /// <summary>The logarithm of the likelihood, events less those expected and the covariance of events, given the week's events, for effects of all days.</summary>
    public (double Log, double[] Excess, double[,] Covariance) At(double[] effects)
    {
        var (log, expected, covariance) = Moments(effects);
        return (log, [.. events.Zip(expected, (y, e) => y - e)], covariance);
    }

    private (double Log, double[] Expected, double[,] Covariance) Moments(double[] effects)
    {
        var count = days.Length;
        Level(effects);
        var (p, q) = (new double[count], new double[count]);
        for (var d = 0; d < count; d++) (p[d], q[d]) = (LogitScale.Fraction(level + effects[days[d]]), LogitScale.Fraction(-level - effects[days[d]]));
        return conditional ? Given(p, q) : WithTerm(p, q);
    }

    /// <summary>Pearson's statistic of the week at effects of all days.</summary>
    public double Pearson(double[] effects)
    {
        var (_, full, covariance) = At(effects);

        // The covariance has rank days - 1: without the last day it is regular.
        var size = days.Length - 1;
        var (rest, inner) = (new double[size], new double[size, size]);
        for (var a = 0; a < size; a++)
        {
            rest[a] = full[a];
            for (var b = 0; b < size; b++) inner[a, b] = covariance[a, b];
        }

        if (SymmetricMatrix.Factor(inner, 1e-13, out _) is not { } factor) return 0;
        var solved = SymmetricMatrix.Solve(factor, rest);
        double sum = 0;
        for (var a = 0; a < size; a++) sum += solved[a] * rest[a];
        return sum;
    }

    /// <summary>The week's term at which as many events are expected as there were.</summary>
    private void Level(double[] effects)
    {
        double Excess(double x)
        {
            double sum = -total;
            for (var d = 0; d < days.Length; d++) sum += trials[d] * LogitScale.Fraction(x + effects[days[d]]);
            return sum;
        }

        var centre = Math.Log(total / (trials.Sum() - total));
        double most = 0;
        foreach (var d in days) most = Math.Max(most, Math.Abs(effects[d]));
        var (low, high) = (centre - most - 1e-9, centre + most + 1e-9);
        var x = level > low && level < high ? level : centre;
        for (var step = 0; step < 200; step++)
        {
            var excess = Excess(x);
            if (excess > 0) high = x;
            else low = x;
            double slope = 0;
            foreach (var (d, n) in days.Zip(trials)) slope += n * LogitScale.Fraction(x + effects[d]) * LogitScale.Fraction(-x - effects[d]);
            var next = x - (excess / slope);
            if (!(next > low && next < high)) next = (low + high) / 2;
            var move = Math.Abs(next - x);
            x = next;
            if (move < 1e-14 * (1 + Math.Abs(x))) break;
        }

        level = x;
    }

    private (double Log, double[] Expected, double[,] Covariance) WithTerm(double[] p, double[] q)
    {
        var count = days.Length;
        double log = 0, sum = 0;
        var (expected, weights, covariance) = (new double[count], new double[count], new double[count, count]);
        for (var d = 0; d < count; d++)
        {
            log += (events[d] == 0 ? 0 : events[d] * Math.Log(p[d])) + (trials[d] == events[d] ? 0 : (trials[d] - events[d]) * Math.Log(q[d]));
            expected[d] = trials[d] * p[d];
            weights[d] = trials[d] * p[d] * q[d];
            sum += weights[d];
        }

        for (var a = 0; a < count; a++)
        {
            for (var b = 0; b < count; b++) covariance[a, b] = (a == b ? weights[a] : 0) - (weights[a] * weights[b] / sum);
        }

        return (log, expected, covariance);
    }

    /// <summary>
    /// The days' events as independent binomials, their sum given: sums of products over all ways to spread the week's events, with first and second moments, day
    /// by day. The binomials are centred on the week's sum, so that nothing grows or vanishes. Of events and the others the fewer are spread.
    /// </summary>
    private (double Log, double[] Expected, double[,] Covariance) Given(double[] p, double[] q)
    {
        var count = days.Length;
        var turned = total > trials.Sum() / 2;
        var spread = (int)Math.Round(turned ? trials.Sum() - total : total);
        double log = 0;
        var zero = new double[] { 1 };
        var one = new double[count][];
        var two = new double[count, count][];
        for (var d = 0; d < count; d++)
        {
            var most = (int)Math.Min(spread, trials[d]);
            var (chance, first, second) = (new double[most + 1], new double[most + 1], new double[most + 1]);
            for (var k = 0; k <= most; k++)
            {
                chance[k] = Math.Exp(turned ? Binomial.LogProbability(k, trials[d], q[d], p[d]) : Binomial.LogProbability(k, trials[d], p[d], q[d]));
                (first[k], second[k]) = (k * chance[k], (double)k * k * chance[k]);
            }

            log += Binomial.LogProbability(events[d], trials[d], p[d], q[d]);
            for (var a = 0; a < d; a++)
            {
                two[a, d] = Spread(one[a], first, spread);
                for (var b = a; b < d; b++) two[a, b] = Spread(two[a, b], chance, spread);
            }

            for (var a = 0; a < d; a++) one[a] = Spread(one[a], chance, spread);
            one[d] = Spread(zero, first, spread);
            two[d, d] = Spread(zero, second, spread);
            zero = Spread(zero, chance, spread);
        }

        var whole = zero[spread];
        var (expected, covariance) = (new double[count], new double[count, count]);
        for (var d = 0; d < count; d++) expected[d] = one[d][spread] / whole;
        for (var a = 0; a < count; a++)
        {
            for (var b = a; b < count; b++) covariance[a, b] = covariance[b, a] = (two[a, b][spread] / whole) - (expected[a] * expected[b]);
        }

        if (turned)
        {
            for (var d = 0; d < count; d++) expected[d] = trials[d] - expected[d];
        }

        return (log - Math.Log(whole), expected, covariance);
    }

    private static double[] Spread(double[] a, double[] b, int most)
    {
        var product = new double[Math.Min(most, a.Length + b.Length - 2) + 1];
        for (var i = 0; i < a.Length; i++)
        {
            if (a[i] == 0) continue;
            var last = Math.Min(b.Length, product.Length - i);
            for (var j = 0; j < last; j++) product[i + j] += a[i] * b[j];
        }

        return product;
    }
}
