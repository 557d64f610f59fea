using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>What a screening routine puts on people who are not infected.</summary>
/// <remarks>
/// Each screen of an uninfected person is positive with chance 1 - Sp, independently of the others; that some of the person-time is that of
/// infected people is ignored, which is right to within the prevalence. False positives that repeat in a person, as those from a cross-reacting
/// substance do, make the same number but fall on fewer people. Source: definitions, in closed form.
/// </remarks>
public static class FalseAlarm
{
    /// <summary>Days in the year that the figures per year are for.</summary>
    public const double DaysPerYear = 365;

    /// <summary>Screens of one person in a year.</summary>
    /// <param name="everyDays">Days from one screen to the next, from a millionth to a billion.</param>
    /// <returns>365/T, which need not be whole.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is outside its domain.</exception>
    public static double ScreensPerPersonYear(double everyDays) => DaysPerYear / new ScreeningRoutine(everyDays, 1).EveryDays;

    /// <summary>False positives of one uninfected person in a year, on average.</summary>
    /// <param name="everyDays">Days from one screen to the next, from a millionth to a billion.</param>
    /// <param name="specificity">The specificity, in [0, 1].</param>
    /// <returns>(365/T)(1 - Sp).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double PerPersonYear(double everyDays, double specificity)
    {
        Guard.Probability(specificity);
        return ScreensPerPersonYear(everyDays) * (1 - specificity);
    }

    /// <summary>The chance that an uninfected person has at least one false positive.</summary>
    /// <param name="screens">Screens taken, from 0 to 1e15; a year's number (365/T) need not be whole.</param>
    /// <param name="specificity">The specificity, in [0, 1].</param>
    /// <returns>1 - Sp^n, in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double ChanceOfAny(double screens, double specificity)
    {
        Guard.Amount(screens);
        Guard.Probability(specificity);
        if (screens == 0) return 0;
        if (specificity == 0) return 1;
        return -Precise.ExponentialMinusOne(screens * (specificity < 0.5 ? Math.Log(specificity) : Precise.LogOnePlus(-(1 - specificity))));
    }

    /// <summary>The prevalence from which a screen gains more than it costs.</summary>
    /// <param name="costOfTest">What a screen costs, 0 or more.</param>
    /// <param name="sensitivity">The sensitivity, in [0, 1].</param>
    /// <param name="specificity">The specificity, in [0, 1].</param>
    /// <param name="costOfFalsePositive">What a false positive costs besides, 0 or more.</param>
    /// <param name="benefitOfTruePositive">What a true positive is worth, 0 or more.</param>
    /// <returns>
    /// (c + (1 - Sp) h)/(s B + (1 - Sp) h), in [0, 1]; undefined where even a prevalence of 1 does not repay the cost, and where nothing costs
    /// or gains anything.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate BreakEvenPrevalence(
        double costOfTest, double sensitivity, double specificity, double costOfFalsePositive, double benefitOfTruePositive)
    {
        Guard.Amount(costOfTest);
        Guard.Probability(sensitivity);
        Guard.Probability(specificity);
        Guard.Amount(costOfFalsePositive);
        Guard.Amount(benefitOfTruePositive);
        var falsePositives = (1 - specificity) * costOfFalsePositive;
        var cost = costOfTest + falsePositives;
        var gain = sensitivity * benefitOfTruePositive;
        if (cost == 0 && gain == 0) return Estimate.Undefined(UndefinedReason.NothingAtStake);
        return gain > 0 && costOfTest <= gain
            ? Estimate.Point(cost / (gain + falsePositives), ScreeningYield.Method)
            : Estimate.Undefined(UndefinedReason.NoPrevalencePays);
    }
}
