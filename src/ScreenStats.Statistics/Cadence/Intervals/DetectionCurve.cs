using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>
/// The chance G(t) of a positive screen within the first t days of an unlimited window, and its integral H(t) from 0 to t. All forms keep
/// their digits where the sensitivity is small.
/// </summary>
internal static class DetectionCurve
{
    /// <summary>G(t): regular 1 - (1 - s)^k (1 - s f) with t/T = k + f; at random 1 - exp(-s t/T).</summary>
    public static double Chance(ScreeningRoutine routine, double days)
    {
        if (days <= 0) return 0;
        var turns = days / routine.EveryDays;
        if (routine.Timing == ScreenTiming.AtRandom) return -Precise.ExponentialMinusOne(-routine.Sensitivity * turns);
        var whole = Math.Floor(turns);
        return Chance(routine.Sensitivity, whole, turns - whole);
    }

    /// <summary>H(t), the days within t that follow a positive screen, on average.</summary>
    public static double Sum(ScreeningRoutine routine, double days)
    {
        if (days <= 0) return 0;
        var turns = days / routine.EveryDays;
        var value = routine.Timing == ScreenTiming.AtRandom ? AtRandom(routine.Sensitivity, turns) : Regular(routine.Sensitivity, turns);
        return Math.Min(routine.EveryDays * value, days);
    }

    /// <summary>
    /// x G(x) - H(x) in units of the interval, x = t/T, of regular screens: the integral of y G'(y) from 0 to x. Times T squared it is what
    /// one more screen a day adds to H. It rises with x to 1/s - 1/2.
    /// </summary>
    public static double Marginal(double sensitivity, double turns)
    {
        var whole = Math.Floor(turns);
        if (sensitivity == 0 || turns <= 0) return 0;
        if (whole * sensitivity < 0.5) return (turns * Chance(sensitivity, whole, turns - whole)) - Regular(sensitivity, turns);
        var missed = Missed(sensitivity, whole);
        return (((1 / sensitivity) - 0.5) * (1 - missed)) - (whole * missed) + (sensitivity * missed * ((turns * turns) - (whole * whole)) / 2);
    }

    private static double Chance(double sensitivity, double whole, double part) =>
        whole == 0 ? sensitivity * part
        : sensitivity == 1 ? 1
        : -Precise.ExponentialMinusOne((whole * Precise.LogOnePlus(-sensitivity)) + Precise.LogOnePlus(-sensitivity * part));

    /// <summary>The sum over whole turns, T [K - (1 - s/2)(1 - (1 - s)^K)/s], and the part of one that is left.</summary>
    private static double Regular(double sensitivity, double turns)
    {
        var whole = Math.Floor(turns);
        var part = turns - whole;
        var missed = Missed(sensitivity, whole);
        var found = Found(sensitivity, whole);
        var sum = whole * sensitivity < 0.5
            ? Series(sensitivity, whole)
            : whole - ((1 - (sensitivity / 2)) * found / sensitivity);
        return sum + (part * found) + (missed * sensitivity * part * part / 2);
    }

    /// <summary>The same sum by the binomial series, s K/2 + (1 - s/2)(C(K, 2) s - C(K, 3) s² + ...), for K s below one half.</summary>
    private static double Series(double sensitivity, double whole)
    {
        var term = whole;
        var sum = 0.0;
        for (var m = 1; m < whole; m++)
        {
            term *= -sensitivity * (whole - m) / (m + 1);
            sum -= term;
            if (Math.Abs(term) <= 1e-18 * Math.Abs(sum)) break;
        }

        return (sensitivity * whole / 2) + ((1 - (sensitivity / 2)) * sum);
    }

    /// <summary>x - (1 - exp(-s x))/s.</summary>
    private static double AtRandom(double sensitivity, double turns)
    {
        var y = sensitivity * turns;
        if (y >= 0.5) return turns - (-Precise.ExponentialMinusOne(-y) / sensitivity);
        var (term, sum) = (1.0, 0.0);
        for (var m = 2; m < 40; m++)
        {
            term *= (m == 2 ? y / 2 : -y / m);
            sum += term;
            if (Math.Abs(term) <= 1e-18 * sum) break;
        }

        return turns * sum;
    }

    private static double Missed(double sensitivity, double whole) =>
        whole == 0 ? 1 : sensitivity == 1 ? 0 : Math.Exp(whole * Precise.LogOnePlus(-sensitivity));

    private static double Found(double sensitivity, double whole) =>
        whole == 0 ? 0 : sensitivity == 1 ? 1 : -Precise.ExponentialMinusOne(whole * Precise.LogOnePlus(-sensitivity));
}
