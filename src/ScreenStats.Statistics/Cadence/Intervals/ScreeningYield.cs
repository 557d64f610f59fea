namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>What screening at an interval finds of an infection, and how much of its infectious time it takes away.</summary>
/// <remarks>
/// <para>The infection happens at any time between two screens with the same chance; it is detectable at ages a to b (w = b - a), a screen
/// then is positive with chance s, independently of the others; from a positive screen to isolation it takes d days; the person is infectious
/// at ages i0 to i1. Regular screens every T days, t/T = k + f with k whole: G(t) = 1 - (1 - s)^k (1 - s f). Screens at random:
/// G(t) = 1 - exp(-s t/T). H(t) is the integral of G from 0 to t, 0 below 0.</para>
/// <para>Source: derived in closed form, as in inspection theory; checked against enumeration over phases in exact rational arithmetic and
/// numerical integration. Misses repeat within a person, and windows differ between people: with both, less is found than this says.</para>
/// <para>Accurate to about 1e-12 of the time looked at, also at small sensitivities.</para>
/// </remarks>
public static class ScreeningYield
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "closed-form";

    /// <summary>The chance that an infection is found at all.</summary>
    /// <param name="routine">How often, and how sensitive.</param>
    /// <param name="windows">When it can be detected.</param>
    /// <returns>G(w), in [0, 1].</returns>
    public static double DetectionProbability(ScreeningRoutine routine, InfectionWindows windows)
    {
        ArgumentNullException.ThrowIfNull(routine);
        return DetectionCurve.Chance(routine, windows.DetectableDays);
    }

    /// <summary>Screens taken while the infection is detectable, up to and with the first positive one, on average.</summary>
    /// <param name="routine">How often, and how sensitive.</param>
    /// <param name="windows">When it can be detected.</param>
    /// <returns>G(w)/s; at a sensitivity of 0 all of them, w/T.</returns>
    public static double ExpectedScreens(ScreeningRoutine routine, InfectionWindows windows)
    {
        ArgumentNullException.ThrowIfNull(routine);
        var all = windows.DetectableDays / routine.EveryDays;
        return routine.Sensitivity < 1e-300 ? all : Math.Min(DetectionProbability(routine, windows) / routine.Sensitivity, all);
    }

    /// <summary>The chance that the person is isolated by an age of the infection.</summary>
    /// <param name="routine">How often, and how sensitive.</param>
    /// <param name="windows">When it can be detected.</param>
    /// <param name="delayDays">Days from a positive screen to isolation, 0 or more.</param>
    /// <param name="age">Days since infection, 0 or more.</param>
    /// <returns>G(min(age - d, b) - a), in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside 0 to a billion days.</exception>
    public static double IsolatedByAge(ScreeningRoutine routine, InfectionWindows windows, double delayDays, double age)
    {
        ArgumentNullException.ThrowIfNull(routine);
        Guard.Days(delayDays);
        Guard.Days(age);
        return DetectionCurve.Chance(routine, Math.Min(age - delayDays, windows.DetectableTo) - windows.DetectableFrom);
    }

    /// <summary>The infectious days of an infection that fall after isolation, on average over infections found and missed.</summary>
    /// <param name="routine">How often, and how sensitive.</param>
    /// <param name="windows">When it can be detected, and when it is passed on.</param>
    /// <param name="delayDays">Days from a positive screen to isolation, 0 or more.</param>
    /// <returns>
    /// I(i1) - I(i0), where I(u) = H(min(u, b + d) - d - a) + max(u - b - d, 0) G(w); from 0 to the length of the infectious time.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The delay is outside 0 to a billion days.</exception>
    public static double InfectiousDaysRemoved(ScreeningRoutine routine, InfectionWindows windows, double delayDays)
    {
        ArgumentNullException.ThrowIfNull(routine);
        Guard.Days(delayDays);
        var found = DetectionProbability(routine, windows);
        var last = windows.DetectableTo + delayDays;
        double Isolated(double age) =>
            DetectionCurve.Sum(routine, Math.Min(age, last) - delayDays - windows.DetectableFrom) + (Math.Max(age - last, 0) * found);
        return Math.Clamp(Isolated(windows.InfectiousTo) - Isolated(windows.InfectiousFrom), 0, windows.InfectiousDays);
    }

    /// <summary>The share of the infectious time that falls after isolation.</summary>
    /// <param name="routine">How often, and how sensitive.</param>
    /// <param name="windows">When it can be detected, and when it is passed on.</param>
    /// <param name="delayDays">Days from a positive screen to isolation, 0 or more.</param>
    /// <returns>The share, in [0, 1]; undefined where the infectious time has no length.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The delay is outside 0 to a billion days.</exception>
    public static Estimate FractionRemoved(ScreeningRoutine routine, InfectionWindows windows, double delayDays)
    {
        var removed = InfectiousDaysRemoved(routine, windows, delayDays);
        return windows.InfectiousDays > 0
            ? Estimate.Point(Math.Min(removed / windows.InfectiousDays, 1), Method)
            : Estimate.Undefined(UndefinedReason.NoInfectiousTime);
    }

    /// <summary>Days from the beginning of a window that never ends to the first positive screen, on average.</summary>
    /// <param name="routine">How often, and how sensitive.</param>
    /// <returns>Regular T (1/s - 1/2), at random T/s; undefined at a sensitivity of 0, or of so little that the wait exceeds 1e15 days.</returns>
    public static Estimate MeanWait(ScreeningRoutine routine)
    {
        ArgumentNullException.ThrowIfNull(routine);
        if (routine.Sensitivity == 0) return Estimate.Undefined(UndefinedReason.NeverDetected);
        var turns = (1 / routine.Sensitivity) - (routine.Timing == ScreenTiming.Regular ? 0.5 : 0);
        var wait = routine.EveryDays * turns;
        return wait <= 1e15 ? Estimate.Point(wait, Method) : Estimate.Undefined(UndefinedReason.TooLarge);
    }
}
