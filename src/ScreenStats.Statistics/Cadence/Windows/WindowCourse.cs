using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Courses.Quadrature;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Cadence.Windows;

/// <summary>
/// An infection with windows, one sensitivity and misses that repeat in a person: what schedules find and remove of it, quickly enough for thousands of draws.
/// </summary>
/// <remarks>
/// <para>Within the window a screen of a person with effect z is positive with one chance s(z), so that all that counts is how many screens fell into it: the chance of no positive one within t days is the mean, over the
/// number n of screens (<see cref="ScreenCounts"/>), of M(n) = mean over people of (1 - s(z))^n. Symptoms isolate independently of it, given the age: what is passed on is the
/// integral of both over the infectious time, here by 64 midpoints. Against <see cref="CourseYield"/>, which is exact, it is within 0.002 (0.005 where all symptoms begin on one day).</para>
/// <para>Source: derived.</para>
/// </remarks>
public sealed class WindowCourse
{
    private const int Points = 64;
    private const int PartsOfDay = 8;

    private readonly InfectionWindows windows;
    private readonly double delay;
    private readonly PersonChances people;
    private readonly double[] chances;
    private readonly SymptomOnset? symptoms;
    private readonly OnsetLaw onset;
    private readonly double[] infectiousFree;
    private readonly double[] detectableFree;
    private readonly double[] daysBefore = [];
    private readonly double? isolation;
    private readonly double isolating;

    /// <summary>Prepares what does not depend on the schedule.</summary>
    /// <param name="windows">When an infection can be detected and passed on; the detectable window at most <see cref="ScreenCounts.LongestDays"/> long.</param>
    /// <param name="sensitivity">The chance that a screen within the detectable window is positive, in [0, 1].</param>
    /// <param name="symptoms">Symptoms and what people do at their onset; null where nobody isolates of their own accord.</param>
    /// <param name="daysToIsolation">Days from taking a positive screen to isolation, 0 or more.</param>
    /// <param name="missCorrelation">How much the misses of one person repeat, as <see cref="ScreeningRules.MissCorrelation"/>.</param>
    /// <param name="isolationDays">Days that a person stays away, as <see cref="ScreeningRules.IsolationDays"/>; null where days away are not asked for.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public WindowCourse(InfectionWindows windows, double sensitivity, SymptomOnset? symptoms, double daysToIsolation, double missCorrelation, double? isolationDays = null)
    {
        if (isolationDays is { } days) Guard.Days(days, nameof(isolationDays));
        Guard.Probability(sensitivity);
        Guard.Days(daysToIsolation);
        if (!(missCorrelation is >= 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(missCorrelation), missCorrelation, "The correlation of misses must lie from 0 to below 1.");
        if (windows.DetectableDays > ScreenCounts.LongestDays)
            throw new ArgumentOutOfRangeException(nameof(windows), windows, "The detectable window must be at most 200 days long.");
        (this.windows, delay) = (windows, daysToIsolation);
        people = new PersonChances(missCorrelation);
        chances = people.Of(sensitivity);
        this.symptoms = symptoms is { Share: > 0, IsolationShare: > 0 } ? symptoms : null;
        if (this.symptoms is { } known) onset = new OnsetLaw(known);
        infectiousFree = new double[Points];
        var width = windows.InfectiousDays / Points;
        for (var i = 0; i < Points; i++) infectiousFree[i] = Free(windows.InfectiousFrom + (i * width), windows.InfectiousFrom + ((i + 1) * width));
        detectableFree = new double[(int)Math.Ceiling(windows.DetectableDays * PartsOfDay)];
        for (var i = 0; i < detectableFree.Length; i++) detectableFree[i] = Free(windows.DetectableFrom + Part(i), windows.DetectableFrom + Part(i + 1));
        isolation = isolationDays;
        if (this.symptoms is not { } who) return;
        isolating = who.Share * who.IsolationShare;
        if (isolationDays is not { } lasting) return;
        daysBefore = new double[detectableFree.Length];
        for (var i = 0; i < daysBefore.Length; i++) daysBefore[i] = onset.DaysBefore(lasting, windows.DetectableFrom + delay + ((Part(i) + Part(i + 1)) / 2));
    }

    /// <summary>Days away without any screen: isolation days of those whom symptoms isolate; null where it is not stated how long an isolation is.</summary>
    public double? DaysAwayBySymptoms => isolation * isolating;

    /// <summary>The share of the infectious time that isolation because of symptoms removes alone; 0 without infectious time.</summary>
    public double RemovedBySymptoms => windows.InfectiousDays > 0 ? Math.Clamp(1 - (infectiousFree.Sum() / Points), 0, 1) : 0;

    /// <summary>The chance that symptoms isolate the person before the infectious time begins; 0 without infectious time.</summary>
    public double CaughtBySymptoms => windows.InfectiousDays > 0 ? Math.Clamp(1 - Free(windows.InfectiousFrom), 0, 1) : 0;

    /// <summary>What a schedule finds and removes.</summary>
    /// <param name="counts">How many screens fall into a window, for windows at least as long as the detectable one.</param>
    /// <param name="acted">The chance that a due screen is taken and, if positive, leads to isolation, in [0, 1].</param>
    /// <returns>The outcome.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The chance is outside [0, 1].</exception>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public WindowOutcome Of(ScreenCounts counts, double acted)
    {
        ArgumentNullException.ThrowIfNull(counts);
        Guard.Probability(acted);
        var days = windows.DetectableDays;
        var missed = counts.Means(Missed(acted, counts.Most), days);
        double Unfound(double t) => t <= 0 ? 1 : counts.At(missed, Math.Min(t, days));
        var (found, before, earlier) = (0.0, 1.0, 0.0);
        for (var i = 0; i < detectableFree.Length; i++)
        {
            var after = Unfound(Part(i + 1));
            found += (before - after) * detectableFree[i];
            if (i < daysBefore.Length) earlier += (before - after) * daysBefore[i];
            before = after;
        }

        var away = isolation is { } lasting ? ((1 - isolating) * (1 - before) * lasting) + (isolating * (lasting + earlier)) : (double?)null;
        if (windows.InfectiousDays <= 0) return new WindowOutcome(Math.Clamp(found, 0, 1), 0, 0) { DaysAway = away };
        var (kept, width, start) = (0.0, windows.InfectiousDays / Points, windows.InfectiousFrom - delay - windows.DetectableFrom);
        for (var i = 0; i < Points; i++) kept += infectiousFree[i] * Unfound(start + ((i + 0.5) * width));
        return new WindowOutcome(
            Math.Clamp(found, 0, 1), Math.Clamp(1 - (kept / Points), 0, 1), Math.Clamp(1 - (Free(windows.InfectiousFrom) * Unfound(start)), 0, 1)) { DaysAway = away };
    }

    /// <summary>Days' worth of infections that the screens of a program find: as <see cref="Incidences.IncidenceEstimate.Exposure"/>.</summary>
    /// <param name="earlier">How many screens came before, for windows at least as long as the detectable one.</param>
    /// <returns>Person-days.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Exposure(EarlierScreens earlier)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        var missed = Missed(1, earlier.Most + 1);
        var first = new double[earlier.Most + 1];
        for (var n = 0; n < first.Length; n++) first[n] = missed[n] - missed[n + 1];
        var (sum, chance) = (0.0, 0.0);
        for (var i = 0; i < detectableFree.Length; i++)
        {
            if (i % PartsOfDay == 0) chance = earlier.Mean(first, i / PartsOfDay);
            sum += chance * detectableFree[i] * (Part(i + 1) - Part(i));
        }

        return earlier.Screens * sum;
    }

    /// <summary>The mean over people of (1 - a s)^n.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double[] Missed(double acted, int most)
    {
        var means = new double[most + 1];
        for (var person = 0; person < chances.Length; person++)
        {
            var weight = people.Weights[person];
            if (weight == 0) continue;
            var miss = 1 - (acted * chances[person]);
            for (var n = 0; n <= most; n++)
            {
                means[n] += weight;
                weight *= miss;
            }
        }

        return means;
    }

    private double Part(int index) => Math.Min((double)index / PartsOfDay, windows.DetectableDays);

    /// <summary>The mean over ages of the chance that symptoms have not isolated the person.</summary>
    private double Free(double from, double to) => symptoms is not { } known ? 1
        : to > from ? 1 - (known.Share * known.IsolationShare * (onset.Antiderivative(1, 0, to) - onset.Antiderivative(1, 0, from)) / (to - from)) : Free(from);

    private double Free(double age) => symptoms is { } known ? 1 - (known.Share * known.IsolationShare * onset.Share(age)) : 1;
}
