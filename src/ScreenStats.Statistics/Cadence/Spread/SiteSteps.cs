using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>The chances of how many new cases one case causes at a site, by how many have been infected before.</summary>
internal static class SiteSteps
{
    /// <summary>Steps for each number of infected from the introductions to below the limit; each as far as the limit or the people reach.</summary>
    public static double[][] Of(OffspringProcess process, int people, int introductions, int limit)
    {
        var first = introductions;
        var last = Math.Min(limit - 1, people);
        var steps = new double[Math.Max(0, last - first + 1)][];
        for (var infected = first; infected <= last; infected++) steps[infected - first] = new double[Math.Min(limit - infected, people - infected + 1)];
        if (people == 1 || process.MeanOffspring == 0)
        {
            foreach (var step in steps) step[0] = 1;
            return steps;
        }

        foreach (var (reach, weight) in Reaches(process, people - 1, last - first + 1)) Add(steps, people, first, reach, weight);
        for (var infected = first; infected <= last; infected++)
        {
            var step = steps[infected - first];
            double choices = 1;
            var left = people - infected;
            for (var more = 0; more < step.Length; more++)
            {
                if (more > 0) choices *= (double)(left - more + 1) / more;
                step[more] *= (1 - process.CaughtInTime) * choices;
            }

            // Nobody infected has a closed form, better than any sum.
            step[0] = process.CaughtInTime + ((1 - process.CaughtInTime) * NobodyOf(process, (double)left / (people - 1)));
        }

        return steps;
    }

    /// <summary>The chance that a case reaches nobody of this share of the others.</summary>
    private static double NobodyOf(OffspringProcess process, double share) => process.Dispersion is { } k
        ? Math.Exp(-k * Precise.LogOnePlus(process.Reproduction * share / k))
        : Math.Exp(-process.Reproduction * share);

    /// <summary>Adds what a case with a given reach (minus the log of the chance to miss a person) does, without the number of choices.</summary>
    /// <remarks>From the end at which the powers grow, so that nothing overflows and what underflows is nothing.</remarks>
    private static void Add(double[][] steps, int people, int first, double reach, double weight)
    {
        var miss = Math.Exp(-reach);
        if (miss > 0.5)
        {
            var back = 1 / miss;
            var odds = reach > 0.1 ? back - 1 : Odds(reach);
            var all = weight * Math.Exp(-reach * (people - first));
            foreach (var step in steps)
            {
                var term = all;
                for (var more = 0; more < step.Length && term > 0; more++)
                {
                    step[more] += term;
                    term *= odds;
                }

                all *= back;
            }

            return;
        }

        // The last entry of each step misses equally many.
        var hit = 1 - miss;
        var fewest = weight * Math.Exp(-reach * (people - first - steps[0].Length + 1));
        if (fewest == 0) return;
        var powers = new double[steps[0].Length];
        powers[0] = 1;
        for (var more = 1; more < powers.Length; more++) powers[more] = powers[more - 1] * hit;
        foreach (var step in steps)
        {
            var missed = fewest;
            for (var more = step.Length - 1; more >= 1 && missed > 0; more--)
            {
                step[more] += missed * powers[more];
                missed *= miss;
            }
        }
    }

    /// <summary>e to the reach minus 1, by its series: relative error below 1e-13 up to 0.1.</summary>
    private static double Odds(double reach)
    {
        double sum = 1;
        for (var n = 8; n >= 2; n--) sum = 1 + (reach / n * sum);
        return reach * sum;
    }

    /// <summary>Reaches and their weights: one where all cases are alike, else points of a trapezoidal sum over u, the logarithm of a gamma variable over its mean.</summary>
    private static IEnumerable<(double Reach, double Weight)> Reaches(OffspringProcess process, double others, int most)
    {
        var mean = process.Reproduction / others;
        if (process.Dispersion is not { } k)
        {
            yield return (mean, 1);
            yield break;
        }

        // Wide enough for what lies outside to be below 1e-14, of points close enough for the narrowest factor.
        var spread = Math.Sqrt(k);
        var step = Math.Min(0.3, 0.75 / Math.Sqrt(k + most));
        var low = k > 100 ? Math.Log(Math.Max(1e-18, 1 - (14 / spread))) - (14 / spread) : Math.Log(Math.Min(1 / (others + 1), Math.Max(k, 1) * mean / k) / mean) - 4 - (35 / (1 + k));
        var high = Precise.LogOnePlus((60 / k) + (15 / spread));
        var count = (long)Math.Ceiling((high - low) / step);
        var constant = Math.Sqrt(k / (2 * Math.PI)) * step * Math.Exp(-Binomial.StirlingRemainder(k));
        for (long i = 0; i <= count; i++)
        {
            var u = low + (i * step);
            var weight = constant * Math.Exp(-k * Above(u));
            if (weight > 0) yield return (mean * Math.Exp(u), weight);
        }
    }

    /// <summary>e to the u minus 1 minus u.</summary>
    private static double Above(double u)
    {
        if (Math.Abs(u) > 0.5) return Math.Exp(u) - 1 - u;
        double term = u * u / 2, sum = term;
        for (var n = 3; n < 30; n++)
        {
            term *= u / n;
            if (sum + term == sum) break;
            sum += term;
        }

        return sum;
    }
}
