using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>
/// Expected infections of a finite workplace, day by day, from what is brought in and what a case passes on at each day after its own infection.
/// </summary>
/// <remarks>
/// <para>On day t each person not yet infected is infected from outside at the rate m / N and from inside at F(t) / N, with
/// F(t) = R sum over j of w(j) i(t - j): expected infections i(t) = S(t) (1 - exp(-(m + F(t)) / N)), divided as m to F. N people, m imports a day while
/// nobody is infected, R infections by one case among people none of whom had it (at most N - 1), w(j) the share of them on day j after infection.
/// Nobody is infected twice within the days, unless immunity ends: who was infected on day t is then among S(t + D) again, D the whole days of immunity, and where
/// these are no whole number one part of the infected is so a day later than the other, with their mean. The infected of earlier days are immune too where that is
/// asked for, and return day by day: S(1) = N - (D - 1) e, with e a day. Imports and R are among people none of whom is immune; what was measured while people
/// were is scaled by <see cref="ImmuneHistory"/>. With imports alone the days then settle at
/// N p / (1 + (D - 1) p), p = 1 - exp(-m / N). Without depletion and with R below 1 the days settle at m / (1 - R); with R above 1 they grow at
/// <see cref="GrowthRate"/>. It is a mean: chance, and outbreaks that happen to end, are the business of <see cref="OffspringProcess"/>. Of a small site
/// with cases that infect most of it at once the mean is too high; see <see cref="SiteOutbreak"/>.</para>
/// <para>Source: the discrete renewal equation with depletion, Diekmann O, Heesterbeek H, Britton T, Mathematical Tools for Understanding Infectious
/// Disease Dynamics, 2013; growth rate: Wallinga J, Lipsitch M, Proc R Soc B 2007;274:599-604 (both from memory).</para>
/// </remarks>
public static class RenewalSpread
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "renewal-equation";

    /// <summary>The longest horizon and the longest infectiousness, in days.</summary>
    public const int MostDays = 100_000;

    /// <summary>The expected infections of each day.</summary>
    /// <param name="people">People at the workplace, from 1 to 1e15; none of them immune but those infected earlier, where these are.</param>
    /// <param name="importsPerDay">Infections a day brought in from outside while nobody has been infected, 0 or more.</param>
    /// <param name="reproduction">Infections that one case causes inside while nobody else has been infected, 0 or more; at most everybody else is.</param>
    /// <param name="infectiousnessByDay">How infectious a case is 1, 2, 3… days after its infection, in any unit: its shares count. Not all 0 unless nothing is passed on.</param>
    /// <param name="days">Days, from 0 to <see cref="MostDays"/>.</param>
    /// <param name="earlierPerDay">Infections a day before the first day, 0 or more: they pass on from the first day and are not counted. Where they are immune, at most the people divided by the days of immunity.</param>
    /// <param name="immunityDays">Days after which someone infected within the days can be infected again, from 1 to <see cref="MostDays"/>; null where nobody is.</param>
    /// <param name="earlierImmune">Whether those infected before the first day are immune for as many days; where these are not stated nobody is immune at the beginning.</param>
    /// <returns>The days and their sums.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static RenewalCourse Run(double people, double importsPerDay, double reproduction, ImmutableArray<double> infectiousnessByDay, int days, double earlierPerDay = 0, double? immunityDays = null, bool earlierImmune = false)
    {
        var daily = new RenewalTotals[Math.Clamp(days, 0, MostDays)];
        var totals = Walk(people, importsPerDay, reproduction, infectiousnessByDay.IsDefault ? [] : infectiousnessByDay.AsSpan(), days, earlierPerDay, immunityDays, earlierImmune, daily);
        return new RenewalCourse(people, ImmutableArray.Create(daily), totals);
    }

    /// <summary>The sums of <see cref="Run"/> alone, quickly: for thousands of draws.</summary>
    /// <param name="people">As there.</param>
    /// <param name="importsPerDay">As there.</param>
    /// <param name="reproduction">As there.</param>
    /// <param name="infectiousnessByDay">As there.</param>
    /// <param name="days">As there.</param>
    /// <param name="earlierPerDay">As there.</param>
    /// <param name="immunityDays">As there.</param>
    /// <param name="earlierImmune">As there.</param>
    /// <returns>The sums.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static RenewalTotals Totals(double people, double importsPerDay, double reproduction, ReadOnlySpan<double> infectiousnessByDay, int days, double earlierPerDay = 0, double? immunityDays = null, bool earlierImmune = false) =>
        Walk(people, importsPerDay, reproduction, infectiousnessByDay, days, earlierPerDay, immunityDays, earlierImmune, []);

    /// <summary>Infections a day once the days have settled, in a workplace that never runs out of people.</summary>
    /// <param name="importsPerDay">Infections a day brought in, 0 or more.</param>
    /// <param name="reproduction">Infections by one case, 0 or more.</param>
    /// <returns>Imports / (1 - R); undefined where a case causes one more or more (0 without imports below that).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate SteadyState(double importsPerDay, double reproduction)
    {
        Guard.Amount(importsPerDay);
        Guard.Amount(reproduction);
        return reproduction >= 1 ? Estimate.Undefined(UndefinedReason.SpreadWithoutBound) : Estimate.Point(importsPerDay / (1 - reproduction), Method);
    }

    /// <summary>The rate a day, on the log scale, at which infections grow or shrink without imports and depletion.</summary>
    /// <param name="reproduction">Infections by one case, 0 or more.</param>
    /// <param name="infectiousnessByDay">How infectious a case is 1, 2, 3… days after its infection, not all 0.</param>
    /// <returns>The root r of R sum w(j) exp(-r j) = 1, of absolute error below 1e-12; 0 at R = 1; undefined where a case infects nobody.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate GrowthRate(double reproduction, ImmutableArray<double> infectiousnessByDay)
    {
        Guard.Amount(reproduction);
        var profile = infectiousnessByDay.IsDefault ? [] : infectiousnessByDay.ToArray();
        var total = Total(profile, 1);
        if (reproduction == 0) return Estimate.Undefined(UndefinedReason.NoSpread);
        if (reproduction == 1) return Estimate.Point(0, Method);
        var first = Array.FindIndex(profile, weight => weight > 0) + 1;
        var last = Array.FindLastIndex(profile, weight => weight > 0) + 1;
        var log = Math.Log(reproduction);
        if (first == last) return Estimate.Point(log / first, Method);
        double Excess(double rate)
        {
            // Scaled by the day on which the exponential is largest, so that nothing overflows.
            var pivot = rate > 0 ? first : last;
            double sum = 0;
            for (var j = first; j <= last; j++) sum += profile[j - 1] / total * Math.Exp(-rate * (j - pivot));
            return log - (rate * pivot) + Math.Log(sum);
        }

        return Estimate.Point(Root.Between(Excess, log / last, log / first), Method);
    }

    /// <summary>How infectious a case is by whole days after its infection, from a course by age.</summary>
    /// <param name="course">The course; people who isolate because of symptoms pass nothing on after their onset.</param>
    /// <returns>
    /// One figure for each day from 1 on, in days of full infectiousness; none where the course is never infectious. What falls on the day of the infection
    /// itself is put on the next.
    /// </returns>
    /// <remarks>
    /// Infections fall at any time of a day, so that age x falls x rounded down or up days later, with the chances that keep the mean: day j takes the integral of
    /// the infectiousness times 1 - |x - j|. Gauss's rule with four points between the knots, the days and the onset's median by whole multiples of its spread: exact without symptoms, else of relative error below 1e-7.
    /// </remarks>
    public static ImmutableArray<double> ByDay(InfectionCourse course)
    {
        ArgumentNullException.ThrowIfNull(course);
        if (course.InfectiousDays <= 0) return [];
        var daily = new double[(int)Math.Floor(course.InfectiousTo) + 1];
        var onsets = course.Symptoms is { } symptoms ? Enumerable.Range(-8, 17).Select(z => symptoms.MedianDays * Math.Exp(z * symptoms.LogSpread)) : [];
        var knots = course.Spread.Ages.Concat(onsets).Concat(Enumerable.Range(0, daily.Length + 1).Select(day => (double)day))
            .Where(age => age >= course.InfectiousFrom && age <= course.InfectiousTo).Distinct().Order().ToArray();
        for (var i = 1; i < knots.Length; i++)
        {
            var (low, high) = (knots[i - 1], knots[i]);
            var day = (int)Math.Floor((low + high) / 2);
            foreach (var (at, weight) in FourPoints)
            {
                var age = low + ((high - low) * at);
                var passed = (high - low) * weight * course.Infectiousness(age) * course.NotIsolatedBySymptoms(age);
                daily[Math.Max(day, 1) - 1] += passed * (day + 1 - age);
                daily[Math.Min(day, daily.Length - 1)] += passed * (age - day);
            }
        }

        return ImmutableArray.Create(daily);
    }

    /// <summary>Gauss's rule with four points on [0, 1] (Abramowitz, Stegun 25.4.30).</summary>
    private static readonly (double At, double Weight)[] FourPoints =
    [
        (0.069431844202973714, 0.17392742256872693), (0.33000947820757187, 0.32607257743127307),
        (0.66999052179242813, 0.32607257743127307), (0.93056815579702629, 0.17392742256872693),
    ];

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static RenewalTotals Walk(
        double people, double importsPerDay, double reproduction, ReadOnlySpan<double> infectiousnessByDay, int days, double earlierPerDay, double? immunityDays, bool earlierImmune, Span<RenewalTotals> daily)
    {
        if (!(people is >= 1 and <= 1e15)) throw new ArgumentOutOfRangeException(nameof(people), people, "The people must be a number from 1 to 1e15.");
        Guard.Amount(importsPerDay);
        Guard.Amount(reproduction);
        Guard.Amount(earlierPerDay);
        if (immunityDays is not (null or (>= 1 and <= MostDays)))
            throw new ArgumentOutOfRangeException(nameof(immunityDays), immunityDays, $"The days of immunity must be a number from 1 to {MostDays}.");
        var before = earlierImmune && immunityDays is not null ? earlierPerDay : 0;
        // A rounding of the product is no more people than there are.
        if (before > 0 && before * immunityDays!.Value > people * (1 + 1e-12))
            throw new ArgumentOutOfRangeException(nameof(earlierPerDay), earlierPerDay, "The infections of earlier days that are still immune must be at most as many as there are people.");
        if (days is < 0 or > MostDays) throw new ArgumentOutOfRangeException(nameof(days), days, $"The days must be a whole number from 0 to {MostDays}.");
        var total = Total(infectiousnessByDay, reproduction);
        var scale = total > 0 ? Math.Min(reproduction, people - 1) / total : 0;

        // Latest first, so that the sum over past days runs along both.
        var length = infectiousnessByDay.Length;
        var infections = new double[days + length];
        infections.AsSpan(0, length).Fill(earlierPerDay);
        var weights = new double[length];
        for (var j = 0; j < length; j++) weights[length - 1 - j] = infectiousnessByDay[j];
        var (whole, part) = immunityDays is { } immune ? ((int)Math.Floor(immune), immune - Math.Floor(immune)) : (days, 0.0);
        double imported = 0, inside = 0, susceptible = people - (before > 0 ? before * immunityDays!.Value : 0);
        for (var day = 0; day < days; day++)
        {
            if (day >= whole || before > 0) susceptible = Math.Clamp(susceptible + Returned(infections.AsSpan(length), day - whole, part, before), 0, people);
            double source = 0;
            var past = infections.AsSpan(day, length);
            for (var j = 0; j < past.Length; j++) source += weights[j] * past[j];
            var force = scale * source;
            var rate = importsPerDay + force;
            var infected = susceptible * ShareInfected(rate / people);
            var fromInside = rate > 0 ? infected * (force / rate) : 0;
            infections[day + length] = infected;
            susceptible = Math.Max(0, susceptible - infected);
            inside += fromInside;
            imported += infected - fromInside;
            if (daily.Length > 0) daily[day] = new RenewalTotals(infected - fromInside, fromInside);
        }

        return new RenewalTotals(imported, inside);
    }

    // Who was infected so many days ago, and of those a day longer ago the part that is immune a day longer.
    private static double Returned(ReadOnlySpan<double> infections, int day, double part, double before) =>
        day < 0 ? before : ((1 - part) * infections[day]) + (part > 0 ? part * (day > 0 ? infections[day - 1] : before) : 0);

    /// <summary>1 - exp(-x): by its series where x is small, as it nearly always is.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double ShareInfected(double x) =>
        x < 0.01 ? x * (1 - (x / 2 * (1 - (x / 3 * (1 - (x / 4 * (1 - (x / 5 * (1 - (x / 6)))))))))) : -Precise.ExponentialMinusOne(-x);

    private static double Total(ReadOnlySpan<double> infectiousnessByDay, double reproduction)
    {
        if (infectiousnessByDay.Length > MostDays)
            throw new ArgumentOutOfRangeException(nameof(infectiousnessByDay), infectiousnessByDay.Length, $"An infectious time has at most {MostDays} days.");
        double total = 0;
        foreach (var weight in infectiousnessByDay)
        {
            if (!(weight is >= 0 and <= 1e15))
                throw new ArgumentOutOfRangeException(nameof(infectiousnessByDay), weight, "The infectiousness of a day must be a number from 0 to 1e15.");
            total += weight;
        }

        return total > 0 || reproduction == 0 ? total
            : throw new ArgumentOutOfRangeException(nameof(infectiousnessByDay), total, "A case that infects others must be infectious on one day at least.");
    }
}
