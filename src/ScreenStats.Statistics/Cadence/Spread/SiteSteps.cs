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
    private static void Add(double[][] steps, int people, int first, double reach, double weight)
    {
        var hit = -Precise.ExponentialMinusOne(-reach);
        var miss = Math.Exp(-reach);
        for (var i = 0; i < steps.Length; i++)
        {
            var step = steps[i];
            var left = people - first - i;

            // From the end, where the fewest are missed: nothing overflows, and what underflows is nothing.
            var missed = weight * Math.Exp(-reach * (left - (step.Length - 1)));
            var power = Math.Pow(hit, step.Length - 1);
            if (hit < 0.5 || power == 0)
            {
                var hits = weight;
                for (var more = 0; more < step.Length && hits > 0; more++)
                {
                    step[more] += hits * Math.Exp(-reach * (left - more));
                    hits *= hit;
                }

                continue;
            }

            for (var more = step.Length - 1; more >= 1 && missed > 0; more--)
            {
                step[more] += missed * power;
                missed *= miss;
                power /= hit;
            }
        }
    }

    /// <summary>Reaches and their weights: one where all cases are alike, else points of a trapezoidal sum over the logarithm of a gamma variable.</summary>
    private static IEnumerable<(double Reach, double Weight)> Reaches(OffspringProcess process, double others, int most)
    {
        if (process.Dispersion is not { } k || k > 1e14)
        {
            yield return (process.Reproduction / others, 1);
            yield break;
        }

        var rate = k * others / process.Reproduction;
        var spread = Math.Sqrt(k);
        var step = Math.Min(0.2, 0.6 / Math.Sqrt(k + most));
        var low = k > 100 ? Math.Log(Math.Max(k * 1e-18, k - (14 * spread)) / rate) - (14 / spread) : Math.Log(Math.Min(1 / (others + 1), Math.Max(k, 1) / rate)) - 42;
        var high = Math.Log((k + 60 + (15 * spread)) / rate);
        var count = (long)Math.Ceiling((high - low) / step);
        var constant = Math.Sqrt(k / (2 * Math.PI)) * step;
        var remainder = Binomial.StirlingRemainder(k);
        for (long i = 0; i <= count; i++)
        {
            var reach = Math.Exp(low + (i * step));
            var weight = constant * Math.Exp(-remainder - Binomial.Deviance(k, rate * reach));
            if (weight > 0) yield return (reach, weight);
        }
    }
}
