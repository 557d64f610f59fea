using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>
/// How many people a case infects: a negative binomial number with a mean and a dispersion (the smaller, the more a few cases cause most
/// of the spread), each case on its own, in a workplace without limit.
/// </summary>
/// <remarks>
/// <para>Chance of no spread by one case: (1 + R/k)^-k; generating function g(s) = (1 + R (1 - s)/k)^-k; Poisson, g(s) = exp(-R (1 - s)), without a
/// dispersion. The chance that the spread dies out is the smallest root of g(s) = s, by Newton's steps from the far side, which go one way as g
/// is convex: absolute error below 1e-12. Sizes of an outbreak, its a introductions included: P(n) = (a/n) P(n cases together infect n - a) (Borel and
/// Tanner where Poisson).</para>
/// <para>A share of cases may be caught before they infect anybody (<see cref="CaughtInTime"/>); all others infect as if nobody were screened. Screening
/// that shortens every case alike scales the mean instead and leaves the dispersion (<see cref="Thinned"/>). The two differ in outbreaks though not in the mean.</para>
/// <para>For a site with few people see <see cref="SiteOutbreak"/>: there an outbreak runs out of people.</para>
/// <para>Source: Lloyd-Smith JO et al., Nature 2005;438:355-359 (negative binomial offspring); Otter R, Ann Math Stat 1949;20:206-224, and Dwass M, J Appl
/// Probab 1969;6:682-686 (total progeny); Blumberg S, Lloyd-Smith JO, PLoS Comput Biol 2013;9:e1002993 (its form with negative binomial offspring)
/// (all from memory).</para>
/// </remarks>
public sealed record OffspringProcess
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "branching-process";

    /// <summary>The smallest dispersion.</summary>
    public const double SmallestDispersion = 1e-12;

    /// <summary>The largest size of an outbreak that is summed up to.</summary>
    public const long LargestSize = 1_000_000;

    /// <summary>The largest size that is summed up to where a share of cases is caught in time.</summary>
    public const long LargestSizeWithCaught = 2_000;

    /// <summary>Makes a process.</summary>
    /// <param name="reproduction">Infections by one case on average (by one not caught in time, where some are), 0 or more.</param>
    /// <param name="dispersion">The dispersion k, from <see cref="SmallestDispersion"/>; null where the number is Poisson.</param>
    /// <param name="caughtInTime">The share of cases that infect nobody as they are caught in time, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public OffspringProcess(double reproduction, double? dispersion = null, double caughtInTime = 0)
    {
        Guard.Amount(reproduction);
        if (dispersion is { } k && !(k is >= SmallestDispersion and <= 1e15))
            throw new ArgumentOutOfRangeException(nameof(dispersion), dispersion, "The dispersion must be a number from 1e-12 to 1e15, or none for Poisson.");
        Guard.Probability(caughtInTime);
        Reproduction = reproduction;
        Dispersion = dispersion;
        CaughtInTime = caughtInTime;
    }

    /// <summary>Infections by one case on average; by one that is not caught in time.</summary>
    public double Reproduction { get; }

    /// <summary>The dispersion; null where Poisson.</summary>
    public double? Dispersion { get; }

    /// <summary>The share of cases that infect nobody, being caught in time.</summary>
    public double CaughtInTime { get; }

    /// <summary>Infections by one case on average, over those caught in time and the others.</summary>
    public double MeanOffspring => (1 - CaughtInTime) * Reproduction;

    /// <summary>The same process where every case infects fewer.</summary>
    /// <param name="fractionRemoved">The share of infections that each case no longer causes, in [0, 1].</param>
    /// <returns>A process with the mean R (1 - share) and the same dispersion: gamma-distributed infectiousness, scaled.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside [0, 1].</exception>
    public OffspringProcess Thinned(double fractionRemoved)
    {
        Guard.Probability(fractionRemoved);
        return new OffspringProcess(Reproduction * (1 - fractionRemoved), Dispersion, CaughtInTime);
    }

    /// <summary>The chance that a case infects exactly so many.</summary>
    /// <param name="infections">A number, 0 or more.</param>
    /// <returns>The chance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public double OffspringProbability(long infections)
    {
        Guard.NotNegative(infections);
        return ((1 - CaughtInTime) * CountProbability.Of(infections, Reproduction, Dispersion)) + (infections == 0 ? CaughtInTime : 0);
    }

    /// <summary>The chance that the spread dies out by itself.</summary>
    /// <param name="introductions">Cases brought in, 0 or more, each with a spread of its own.</param>
    /// <returns>In [0, 1]; 1 where a case causes one other or fewer.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public double ExtinctionProbability(long introductions = 1)
    {
        Guard.NotNegative(introductions);
        var survival = Survival();
        return introductions == 0 ? 1 : survival >= 1 ? 0 : Math.Exp(introductions * Precise.LogOnePlus(-survival));
    }

    /// <summary>The chance that nobody is infected in the given generation or later.</summary>
    /// <param name="generations">Generations after the introductions, 0 to 100,000.</param>
    /// <param name="introductions">Cases brought in, 0 or more.</param>
    /// <returns>In [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public double ExtinctBy(int generations, long introductions = 1)
    {
        Generations(generations);
        Guard.NotNegative(introductions);
        if (introductions == 0) return 1;
        var alive = 1.0;
        for (var g = 0; g < generations && alive > 0; g++) alive = Spreading(alive);
        return alive >= 1 ? 0 : Math.Exp(introductions * Precise.LogOnePlus(-alive));
    }

    /// <summary>The mean number of cases in one generation.</summary>
    /// <param name="generations">The generation, 0 being the introductions, to 100,000.</param>
    /// <param name="introductions">Cases brought in, 0 or more.</param>
    /// <returns>Introductions times the mean offspring to the power of the generation; undefined where too large for a number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public Estimate MeanAfterGenerations(int generations, long introductions = 1)
    {
        Generations(generations);
        Guard.NotNegative(introductions);
        return Finite(introductions == 0 ? 0 : introductions * Math.Pow(MeanOffspring, generations));
    }

    /// <summary>The mean number of cases from the introductions up to one generation, the introductions included.</summary>
    /// <param name="generations">The last generation that counts, 0 to 100,000.</param>
    /// <param name="introductions">Cases brought in, 0 or more.</param>
    /// <returns>A figure, or undefined where too large for a number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public Estimate MeanUpToGeneration(int generations, long introductions = 1)
    {
        Generations(generations);
        Guard.NotNegative(introductions);
        if (introductions == 0) return Finite(0);
        double sum = 0, cases = introductions;
        for (var g = 0; g <= generations && cases > 0 && double.IsFinite(sum); g++, cases *= MeanOffspring) sum += cases;
        return Finite(sum);
    }

    /// <summary>The mean number of cases of a whole outbreak, the introductions included.</summary>
    /// <param name="introductions">Cases brought in, 0 or more.</param>
    /// <returns>Introductions / (1 - mean offspring); undefined where a case causes one more or more.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public Estimate MeanSize(long introductions = 1)
    {
        Guard.NotNegative(introductions);
        if (introductions == 0) return Finite(0);
        return MeanOffspring >= 1 ? Estimate.Undefined(UndefinedReason.SpreadWithoutBound) : Finite(introductions / (1 - MeanOffspring));
    }

    /// <summary>The chance that an outbreak ends with exactly so many cases, the introductions included.</summary>
    /// <param name="size">Cases, 0 or more.</param>
    /// <param name="introductions">Cases brought in, 0 or more.</param>
    /// <returns>In [0, 1]. The chances of all sizes add up to <see cref="ExtinctionProbability"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A figure outside its domain; a size beyond <see cref="LargestSize"/>, or <see cref="LargestSizeWithCaught"/> where a share is caught in time.
    /// </exception>
    public double SizeProbability(long size, long introductions = 1)
    {
        Sizes(size, introductions);
        return SizeChance(size, introductions);
    }

    /// <summary>The chance that an outbreak has so many cases or more, the introductions included.</summary>
    /// <param name="size">Cases, 0 or more; 5 for "five or more cases from an introduction".</param>
    /// <param name="introductions">Cases brought in, 0 or more, whose cases are counted together.</param>
    /// <returns>In [0, 1]; an outbreak that never ends counts as large. Absolute error below 1e-12; where the chance is small, mostly relative too.</returns>
    /// <exception cref="ArgumentOutOfRangeException">As with <see cref="SizeProbability"/>.</exception>
    public double AtLeast(long size, long introductions = 1)
    {
        Sizes(size, introductions);
        if (size <= introductions) return 1;
        if (introductions == 0 || MeanOffspring == 0) return 0;
        double below = 0;
        for (var n = introductions; n < size; n++) below += SizeChance(n, introductions);
        return below < 0.9999 ? Math.Max(0, 1 - below) : Beyond(size, introductions) ?? Math.Clamp(1 - below, 0, 1);
    }

    /// <summary>Small chances from their own terms: 1 minus nearly 1 would have few digits. Null where the terms do not die out soon.</summary>
    private double? Beyond(long size, long introductions)
    {
        var forever = 1 - ExtinctionProbability(introductions);
        var last = size + (CaughtInTime > 0 ? 200 : 20_000);
        double sum = 0;
        for (var n = size; n < last; n++)
        {
            var term = SizeChance(n, introductions);
            sum += term;
            if (term <= 1e-17 * sum) return Math.Clamp(sum + forever, 0, 1);
        }

        return null;
    }

    private double SizeChance(long size, long introductions)
    {
        if (size < introductions) return 0;
        if (introductions == 0) return size == 0 ? 1 : 0;
        var infected = size - introductions;
        var share = (double)introductions / size;
        if (CaughtInTime == 0) return share * CountProbability.Of(infected, size * Reproduction, size * Dispersion);
        double sum = 0;
        for (long free = 0; free <= size; free++)
        {
            var weight = Binomial.Probability(free, size, 1 - CaughtInTime, CaughtInTime);
            if (weight > 0) sum += weight * (free == 0 ? (infected == 0 ? 1 : 0) : CountProbability.Of(infected, free * Reproduction, free * Dispersion));
        }

        return Math.Min(1, share * sum);
    }

    /// <summary>1 - g(1 - u): the chance that a case infects somebody whose spread has the chance u of lasting.</summary>
    private double Spreading(double u) => -(1 - CaughtInTime) * Precise.ExponentialMinusOne(LogEscape(u));

    private double LogEscape(double u) => Dispersion is { } k ? -k * Precise.LogOnePlus(Reproduction * u / k) : -Reproduction * u;

    /// <summary>The largest root of u = 1 - g(1 - u), which is convex below 1: Newton's steps from 1 fall towards it.</summary>
    private double Survival()
    {
        if (MeanOffspring <= 1) return 0;
        var u = 1.0;
        for (var step = 0; step < 200; step++)
        {
            var excess = u - Spreading(u);
            var slope = 1 - ((1 - CaughtInTime) * Reproduction * Math.Exp(LogEscape(u)) / (Dispersion is { } k ? 1 + (Reproduction * u / k) : 1));
            if (!(slope > 0)) break;
            var next = u - (excess / slope);
            if (!(next < u) || next <= 0) return next <= 0 ? 0 : u;
            u = next;
        }

        return u;
    }

    private static Estimate Finite(double value) => double.IsFinite(value) ? Estimate.Point(value, Method) : Estimate.Undefined(UndefinedReason.TooLarge);

    private static void Generations(int generations)
    {
        if (generations is < 0 or > 100_000) throw new ArgumentOutOfRangeException(nameof(generations), generations, "The generations must be a whole number from 0 to 100,000.");
    }

    private void Sizes(long size, long introductions)
    {
        var largest = CaughtInTime > 0 ? LargestSizeWithCaught : LargestSize;
        if (size < 0 || size > largest) throw new ArgumentOutOfRangeException(nameof(size), size, $"The size of an outbreak must be a whole number from 0 to {largest}.");
        Guard.NotNegative(introductions);
    }
}
