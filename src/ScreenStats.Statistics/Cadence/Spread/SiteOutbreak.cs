using System.Collections.Immutable;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>How large an outbreak at one site of few people becomes, exactly: there it runs out of people, which no branching process does.</summary>
/// <remarks>
/// <para>A case has an infectiousness that is gamma distributed (mean R, shape k; R for all where Poisson), and reaches each of the N - 1 others with the
/// chance 1 - exp(-infectiousness/(N - 1)), independently given it: contacts fall on the others at random, and two on the same person infect once. Who is
/// reached and was never infected becomes a case. The order of the cases does not matter for the final size, so they are taken one after the other
/// (a chain over infected and dealt with), and each step is a binomial mixed over the gamma: trapezoidal sums on the log scale, which have only positive
/// terms and converge as fast as the integrand is smooth; absolute error below 1e-11. As N grows the sizes become those of <see cref="OffspringProcess"/>.</para>
/// <para>Sites are taken apart: nobody infects a person of another site.</para>
/// <para>Source: final size of the epidemic with random infectious periods, Ball F, Adv Appl Probab 1986;18:289-310; Andersson H, Britton T, Stochastic
/// Epidemic Models and Their Statistical Analysis, 2000, chapter 2 (both from memory). The chain and its sums are our own arrangement.</para>
/// </remarks>
public static class SiteOutbreak
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "site-chain";

    /// <summary>The largest site of which all sizes are computed.</summary>
    public const int MostPeople = 500;

    /// <summary>The largest site of all.</summary>
    public const int MostPeopleOfAll = 1_000_000_000;

    /// <summary>The largest size that is looked at where a site has more than <see cref="MostPeople"/>.</summary>
    public const int LargestSize = 30;

    /// <summary>The chance of each final size at a site.</summary>
    /// <param name="process">How many people a case infects while nobody else has been.</param>
    /// <param name="people">People at the site, those brought in as cases included, 1 to <see cref="MostPeople"/>.</param>
    /// <param name="introductions">Cases at the start, 0 to all.</param>
    /// <returns>The chance of 0, 1, … all cases, those at the start included; they add up to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmutableArray<double> Sizes(OffspringProcess process, int people, int introductions = 1)
    {
        ArgumentNullException.ThrowIfNull(process);
        if (people is < 1 or > MostPeople) throw new ArgumentOutOfRangeException(nameof(people), people, $"A site whose sizes are all computed has from 1 to {MostPeople} people.");
        Introductions(introductions, people);
        return ImmutableArray.Create(Chain(process, people, introductions, people + 1).Sizes);
    }

    /// <summary>The chance that an outbreak at a site has so many cases or more, those at the start included.</summary>
    /// <param name="process">How many people a case infects while nobody else has been.</param>
    /// <param name="people">People at the site, 1 to <see cref="MostPeopleOfAll"/>.</param>
    /// <param name="size">Cases, 0 or more; at most <see cref="LargestSize"/> where the site has more than <see cref="MostPeople"/>.</param>
    /// <param name="introductions">Cases at the start, 0 to all.</param>
    /// <returns>In [0, 1]; 0 where the site has fewer people.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double AtLeast(OffspringProcess process, int people, int size, int introductions = 1)
    {
        ArgumentNullException.ThrowIfNull(process);
        if (people is < 1 or > MostPeopleOfAll) throw new ArgumentOutOfRangeException(nameof(people), people, "A site has from 1 person to a billion.");
        if (size < 0 || (people > MostPeople && size > LargestSize))
            throw new ArgumentOutOfRangeException(nameof(size), size, $"The size of an outbreak must be 0 or more, and at most {LargestSize} where a site has more than {MostPeople} people.");
        Introductions(introductions, people);
        if (size <= introductions) return 1;
        return size > people || introductions == 0 ? 0 : Math.Clamp(Chain(process, people, introductions, size).Beyond, 0, 1);
    }

    /// <summary>Outbreaks at several sites, each on its own, where cases are brought in at random.</summary>
    /// <param name="process">How many people a case infects while nobody else has been.</param>
    /// <param name="sites">People of each site and the cases brought in there, on average (Poisson), each into a site without other cases.</param>
    /// <param name="size">Cases that make an outbreak, 1 or more, the one brought in included; see <see cref="AtLeast"/> for large sites.</param>
    /// <returns>The chance at each site, the outbreaks expected over all, and the chance of any: 1 - exp(-expected).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static SeparateOutbreaks Over(OffspringProcess process, ImmutableArray<SiteIntroductions> sites, int size)
    {
        ArgumentNullException.ThrowIfNull(process);
        if (size < 1) throw new ArgumentOutOfRangeException(nameof(size), size, "An outbreak has one case or more.");
        if (sites.IsDefault) throw new ArgumentNullException(nameof(sites));
        var chances = new Dictionary<int, double>();
        foreach (var people in sites.Select(site => site.People).Distinct()) chances[people] = AtLeast(process, people, size);
        ImmutableArray<double> each = [.. sites.Select(site => chances[site.People])];
        var expected = sites.Sum(site => site.Introductions * chances[site.People]);
        return new SeparateOutbreaks(size, sites, each, expected, -Precise.ExponentialMinusOne(-expected));
    }

    /// <summary>The chance of each size below a limit, and that of reaching it.</summary>
    private static (double[] Sizes, double Beyond) Chain(OffspringProcess process, int people, int introductions, int limit)
    {
        var sizes = new double[Math.Min(limit, people + 1)];
        if (introductions == 0)
        {
            sizes[0] = 1;
            return (sizes, 0);
        }

        // Of the first step on: with i infected, the chance that one case infects 0, 1, … of the people - i who were not.
        var steps = SiteSteps.Of(process, people, introductions, limit);
        var state = new double[sizes.Length];
        state[introductions] = 1;
        double beyond = 0;
        for (var done = 0; done < sizes.Length; done++)
        {
            // Whoever is infected has been dealt with: the outbreak ends at this size.
            sizes[done] = state[done];
            var next = new double[sizes.Length];
            for (var infected = Math.Max(done + 1, introductions); infected < sizes.Length; infected++)
            {
                if (state[infected] == 0) continue;
                var step = steps[infected - introductions];
                double kept = 0;
                for (var more = 0; more < step.Length; more++)
                {
                    next[infected + more] += state[infected] * step[more];
                    kept += step[more];
                }

                beyond += state[infected] * Math.Max(0, 1 - kept);
            }

            state = next;
        }

        return (sizes, beyond);
    }

    private static void Introductions(int introductions, int people)
    {
        if (introductions < 0 || introductions > people)
            throw new ArgumentOutOfRangeException(nameof(introductions), introductions, "The cases at the start must be from 0 to the people of the site.");
    }
}
