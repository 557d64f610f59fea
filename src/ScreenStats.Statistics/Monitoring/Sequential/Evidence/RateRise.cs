using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>Evidence that rare events have come faster since one of them than before, whatever the rate before was; valid however often one looks.</summary>
/// <remarks>
/// <para>
/// Events of a place come at a constant, unknown rate per test under the null. Had the rate become θ times as high right after the j-th of n events, the
/// times of the events, in tests, would be θ^(n - j) (T / (a + θ (T - a)))^n times as likely, a being the tests up to the j-th event and T those up to the n-th:
/// the likelihood ratio of what does not depend on the unit of time, so that the rate drops out. It is averaged over θ = 4, 8, 16, 32, 64 and over j
/// with the weights 1 / (j (j + 1)); what has not begun counts as 1.
/// </para>
/// <para>
/// From event to event it is a martingale that begins at 1 for every rate: given T, the next event's T' has T / T' distributed as Beta(n, 1), and
/// ∫ θ n (a + θ (T - a))^n / (a + θ (T' - a))^(n + 1) dT' from T on is 1. By Ville's inequality it ever reaches c with a chance of at most 1 / c. It falls with
/// T and rises with a; so where only days are known, tests before the j-th event's day in place of a, and tests up to the end of the day of the look in place of
/// T, keep the promise.
/// </para>
/// <para>
/// It holds for events that come independently of each other. One person with several events in a row, or a follow-up that becomes more complete, makes a
/// rise too. Sources: the invariant likelihood ratio after Pérez-Ortiz MF, Lardy T, de Heide R, Grünwald P, E-statistics, group invariance and anytime-valid
/// testing, Ann Stat 2024 (from memory); the integral above is the proof for this case.
/// </para>
/// </remarks>
public static class RateRise
{
    private static readonly double[] Multiples = [4, 8, 16, 32, 64];
    private static readonly double[] LogMultiples = Array.ConvertAll(Multiples, Math.Log);

    /// <summary>The natural logarithm of the evidence.</summary>
    /// <param name="before">For each event the tests before it (or before its day), finite, 0 or more, in order.</param>
    /// <param name="now">Tests up to the last event, or up to now; above 0 where there are events, and at least the last of <paramref name="before"/>.</param>
    /// <returns>The logarithm; 0 with fewer than two events.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Tests that are negative, not finite or out of order.</exception>
    public static double LogEvidence(IReadOnlyList<double> before, double now)
    {
        ArgumentNullException.ThrowIfNull(before);
        double last = 0;
        foreach (var tests in before)
        {
            if (!(tests >= last) || !double.IsFinite(tests)) throw new ArgumentOutOfRangeException(nameof(before), tests, "Tests before events are finite, 0 or more and in order.");
            last = tests;
        }

        if (!double.IsFinite(now) || !(now >= last) || (before.Count > 0 && now <= 0))
            throw new ArgumentOutOfRangeException(nameof(now), now, "Tests up to now are finite, above 0, and no fewer than before the last event.");
        var events = before.Count;
        if (events < 2) return 0;
        var waiting = -Math.Log(events);
        var (highest, sum) = (waiting, 1.0);
        for (var j = 1; j < events; j++)
        {
            var weight = -Math.Log(j) - Math.Log(j + 1.0) - Math.Log(Multiples.Length);
            // (a + θ (T - a)) / T = 1 + (θ - 1) (T - a) / T.
            var later = (now - before[j - 1]) / now;
            for (var i = 0; i < Multiples.Length; i++)
            {
                var log = weight + ((events - j) * LogMultiples[i]) - (events * Precise.LogOnePlus((Multiples[i] - 1) * later));
                if (log <= highest)
                {
                    sum += Math.Exp(log - highest);
                }
                else
                {
                    sum = (sum * Math.Exp(highest - log)) + 1;
                    highest = log;
                }
            }
        }

        return highest + Math.Log(sum);
    }
}
