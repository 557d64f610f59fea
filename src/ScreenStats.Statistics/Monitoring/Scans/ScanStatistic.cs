using MathNet.Numerics;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>The chance that the fullest window of a stretch of time holds at least so many events.</summary>
public static class ScanStatistic
{
    /// <summary>The most arrangements of events over cells that the exact sum adds up, and the most states that the exact recursion keeps.</summary>
    public const long LargestSum = 400_000;

    /// <summary>Given how many events there were in all, each at any moment with equal chance: exact.</summary>
    /// <param name="inWindow">Events in the fullest window, 1 or more.</param>
    /// <param name="events">Events in all, 0 or more.</param>
    /// <param name="window">The length of the window as a share of the whole, in (0, 1]: exact for 1/2, 1/3, 1/4, …</param>
    /// <returns>The chance; undefined for another share, or where the sum has more than <see cref="LargestSum"/> arrangements.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// One minus N!/L^N times the sum, over all arrangements of the N events in L cells with fewer than k in each, of the determinant of 1/h! with
    /// h(i, j) events of a path from the start of path i to the end of path j: counts of neighbouring cells are paths that must not meet. Absolute
    /// error below 1e-10. Source: Naus JI, Biometrika 1966;53:157-162 (from memory; the paths as in Karlin and McGregor).
    /// </remarks>
    public static ScanProbability Exact(long inWindow, long events, double window)
    {
        Check(inWindow, events, window);
        if (inWindow > events) return Of(0, true, "exact");
        if (inWindow == 1 || window >= 1) return Of(1, true, "exact");
        var cells = Math.Round(1 / window);
        if (Math.Abs((cells * window) - 1) > 1e-12 || cells > 1000 || Arrangements(events, (int)cells, inWindow - 1) > LargestSum)
            return new ScanProbability(null, true, null, UndefinedReason.TooManyTerms);
        return Of(1 - ScanPaths.NoCluster((int)inWindow, (int)events, (int)cells), true, "exact");
    }

    /// <summary>The same, approximated: good where the chance is small, for any window.</summary>
    /// <param name="inWindow">Events in the fullest window, 1 or more.</param>
    /// <param name="events">Events in all, 0 or more.</param>
    /// <param name="window">The length of the window as a share of the whole, in (0, 1].</param>
    /// <returns>The chance, at most 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// (k/w - N - 1) b(k) + 2 G(k) with the binomial probability and tail of N and w. Source: Wallenstein S, Neff N, Stat Med 1987;6:197-207 (from
    /// memory).
    /// </remarks>
    public static ScanProbability Approximate(long inWindow, long events, double window)
    {
        Check(inWindow, events, window);
        const string Method = "Wallenstein and Neff's approximation";
        if (inWindow > events) return Of(0, true, "exact");
        if (inWindow == 1 || window >= 1) return Of(1, true, "exact");
        var point = Binomial.Probability(inWindow, events, window, 1 - window);
        var tail = Binomial.BetaLower(inWindow, events - inWindow + 1, window, 1 - window);
        return Of((((inWindow / window) - events - 1) * point) + (2 * tail), false, Method);
    }

    /// <summary>With a steady rate of events, their number not known beforehand: approximated.</summary>
    /// <param name="inWindow">Events in the fullest window, 1 or more.</param>
    /// <param name="expectedInWindow">Events expected in one window, finite, 0 or more.</param>
    /// <param name="windows">The length of the whole in windows, finite, 2 or more.</param>
    /// <returns>The chance.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// 1 - Q2 (Q3/Q2)^(L - 2) with the exact chances Q2 and Q3 that two and three windows' lengths hold no such window. Source: Naus JI, J Am Stat
    /// Assoc 1982;77:177-183 (from memory).
    /// </remarks>
    public static ScanProbability Poisson(long inWindow, double expectedInWindow, double windows)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inWindow, 1);
        if (!(expectedInWindow >= 0) || !double.IsFinite(expectedInWindow)) throw new ArgumentOutOfRangeException(nameof(expectedInWindow), expectedInWindow, "The events expected in a window must be a finite number, 0 or more.");
        if (!(windows >= 2) || !double.IsFinite(windows)) throw new ArgumentOutOfRangeException(nameof(windows), windows, "The whole must be a finite number of windows, 2 or more.");
        if (expectedInWindow == 0) return Of(0, true, "exact");
        if (inWindow == 1) return Of(-Precise.ExponentialMinusOne(-expectedInWindow * windows), true, "exact");
        if (inWindow > 100_000) return new ScanProbability(null, false, null, UndefinedReason.TooManyTerms);
        var (two, three) = ScanPoisson.WithoutCluster((int)inWindow, expectedInWindow);

        // Where no window's length is free of a cluster, none of many is.
        if (!(two > 0 && three > 0)) return Of(1, false, "Naus's approximation");
        return Of(-Precise.ExponentialMinusOne(Math.Log(two) + ((windows - 2) * Math.Log(Math.Min(1, three / two)))), false, "Naus's approximation");
    }

    /// <summary>In a row of trials, each an event with the same chance: exact.</summary>
    /// <param name="inWindow">Events in the fullest window, 1 or more.</param>
    /// <param name="window">Trials of a window, 1 to 64.</param>
    /// <param name="trials">Trials in all, 0 or more.</param>
    /// <param name="rate">The chance of an event, in [0, 1].</param>
    /// <returns>The chance; undefined for a window above 64 trials or where the recursion would keep more than <see cref="LargestSum"/> states.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>
    /// A recursion over all arrangements of the last trials of a window; the chances of a first full window are added up, so a small one keeps its
    /// relative precision. With a window of as many trials as events it is the chance of a run.
    /// </remarks>
    public static ScanProbability Bernoulli(long inWindow, long window, long trials, double rate)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inWindow, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(window, 1);
        Guard.NotNegative(trials);
        Guard.Probability(rate);
        if (inWindow > Math.Min(window, trials) || rate <= 0) return Of(0, true, "exact");
        if (rate >= 1) return Of(1, true, "exact");
        if (window > 64 || States(window - 1, inWindow - 1) > LargestSum || trials * States(window - 1, inWindow - 1) > 1e10)
            return new ScanProbability(null, true, null, UndefinedReason.TooManyTerms);
        return Of(ScanRecursion.Chance((int)inWindow, (int)window, trials, rate), true, "exact");
    }

    private static ScanProbability Of(double value, bool exact, string method) => new(Math.Clamp(value, 0, 1), exact, method, null);

    private static double States(long positions, long most)
    {
        double sum = 0;
        for (long k = 0; k <= Math.Min(most, positions); k++) sum += SpecialFunctions.Binomial((int)positions, (int)k);
        return sum;
    }

    /// <summary>The ways to put the events into the cells with at most so many in each.</summary>
    private static double Arrangements(long events, int cells, long most)
    {
        if (events > cells * most) return 0;
        if (events > 10_000) return double.PositiveInfinity;
        var ways = new double[events + 1];
        ways[0] = 1;
        for (var cell = 0; cell < cells; cell++)
        {
            double inside = 0;
            var next = new double[events + 1];
            for (var k = 0; k <= events; k++)
            {
                inside += ways[k];
                if (k > most) inside -= ways[k - most - 1];
                next[k] = inside;
            }

            ways = next;
            if (ways[events] > 1e15) return double.PositiveInfinity;
        }

        return ways[events];
    }

    private static void Check(long inWindow, long events, double window)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inWindow, 1);
        Guard.NotNegative(events);
        if (!(window > 0 && window <= 1)) throw new ArgumentOutOfRangeException(nameof(window), window, "The window is a share of the whole, above 0 and at most 1.");
    }
}
