using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Economics.Turning;

/// <summary>The value of each figure at which one screen just repays its cost, the others as stated.</summary>
/// <remarks>
/// The net gain of a screen, p s B - c - (1 - p)(1 - Sp) h, is a straight line in each figure; here it is set to 0 and solved. For the break-even incidence with an interval of screens see
/// <see cref="BestInterval.BreakEvenIncidence"/>; for the prevalence below which half of the positives are false
/// <see cref="Accuracy.PredictiveValue.PrevalenceForPositiveShare"/>; where the gain is no such line, <see cref="TurningPoint"/>. Source: derived in closed form.
/// </remarks>
public static class BreakEven
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "closed-form";

    /// <summary>The net gain of a screen.</summary>
    /// <param name="gain">The figures.</param>
    /// <returns>p s B - c - (1 - p)(1 - Sp) h; below 0 where the screen costs more than it gains.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double NetPerScreen(ScreenGain gain)
    {
        ArgumentNullException.ThrowIfNull(gain);
        gain.Check();
        return Gained(gain) - gain.CostOfScreen - Lost(gain);
    }

    /// <summary>The lowest prevalence at which a screen repays its cost.</summary>
    /// <param name="gain">The figures; its prevalence is not used.</param>
    /// <returns>As <see cref="FalseAlarm.BreakEvenPrevalence"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Prevalence(ScreenGain gain)
    {
        ArgumentNullException.ThrowIfNull(gain);
        gain.Check();
        return FalseAlarm.BreakEvenPrevalence(gain.CostOfScreen, gain.Sensitivity, gain.Specificity, gain.CostOfFalsePositive, gain.BenefitOfTruePositive);
    }

    /// <summary>The lowest specificity at which a screen repays its cost.</summary>
    /// <param name="gain">The figures; its specificity is not used.</param>
    /// <returns>1 - (p s B - c)/((1 - p) h), in [0, 1]; undefined where the screen pays at any specificity or at none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Specificity(ScreenGain gain)
    {
        ArgumentNullException.ThrowIfNull(gain);
        gain.Check();
        var spare = Gained(gain) - gain.CostOfScreen;
        if (spare < 0) return Estimate.Undefined(UndefinedReason.NeverPays);
        var harm = (1 - gain.Prevalence) * gain.CostOfFalsePositive;
        return spare >= harm ? Estimate.Undefined(UndefinedReason.AlwaysPays) : Estimate.Point(1 - (spare / harm), Method);
    }

    /// <summary>The lowest sensitivity at which a screen repays its cost.</summary>
    /// <param name="gain">The figures; its sensitivity is not used.</param>
    /// <returns>(c + (1 - p)(1 - Sp) h)/(p B), in [0, 1]; undefined where no sensitivity repays the cost, or there is none to repay.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate Sensitivity(ScreenGain gain)
    {
        ArgumentNullException.ThrowIfNull(gain);
        gain.Check();
        var cost = gain.CostOfScreen + Lost(gain);
        if (cost == 0) return Estimate.Undefined(UndefinedReason.AlwaysPays);
        var most = gain.Prevalence * gain.BenefitOfTruePositive;
        return cost > most ? Estimate.Undefined(UndefinedReason.NeverPays) : Estimate.Point(cost / most, Method);
    }

    /// <summary>The highest cost of a screen that it repays.</summary>
    /// <param name="gain">The figures; its cost of a screen is not used.</param>
    /// <returns>p s B - (1 - p)(1 - Sp) h; undefined where even a free screen would lose.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate CostOfScreen(ScreenGain gain)
    {
        ArgumentNullException.ThrowIfNull(gain);
        gain.Check();
        var most = Gained(gain) - Lost(gain);
        return most < 0 ? Estimate.Undefined(UndefinedReason.NeverPays) : Estimate.Point(most, Method);
    }

    /// <summary>The highest cost of a false positive that a screen repays.</summary>
    /// <param name="gain">The figures; its cost of a false positive is not used.</param>
    /// <returns>(p s B - c)/((1 - p)(1 - Sp)); undefined where the screen loses without false positives, or can have none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate CostOfFalsePositive(ScreenGain gain)
    {
        ArgumentNullException.ThrowIfNull(gain);
        gain.Check();
        var spare = Gained(gain) - gain.CostOfScreen;
        if (spare < 0) return Estimate.Undefined(UndefinedReason.NeverPays);
        return Ratio(spare, (1 - gain.Prevalence) * (1 - gain.Specificity), UndefinedReason.AlwaysPays);
    }

    /// <summary>The lowest worth of a true positive at which a screen repays its cost.</summary>
    /// <param name="gain">The figures; its benefit is not used.</param>
    /// <returns>(c + (1 - p)(1 - Sp) h)/(p s); undefined where no true positive can occur though something must be repaid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate BenefitOfTruePositive(ScreenGain gain)
    {
        ArgumentNullException.ThrowIfNull(gain);
        gain.Check();
        var cost = gain.CostOfScreen + Lost(gain);
        return cost == 0 ? Estimate.Point(0, Method) : Ratio(cost, gain.Prevalence * gain.Sensitivity, UndefinedReason.NeverPays);
    }

    /// <summary>The lowest share of due screens that must be taken for a program with fixed costs to repay them.</summary>
    /// <param name="gain">The figures.</param>
    /// <param name="screensDue">Screens due in a period, from 0 to 1e15.</param>
    /// <param name="fixedCost">What the program costs in that period whatever the number of screens, 0 or more.</param>
    /// <returns>fixed cost over screens due times net gain, in [0, 1]; undefined where a screen gains nothing, or all of them too little.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    /// <remarks>It takes those who take part to be infected as often as the others.</remarks>
    public static Estimate Participation(ScreenGain gain, double screensDue, double fixedCost)
    {
        var net = NetPerScreen(gain);
        Guard.Amount(screensDue);
        Guard.Amount(fixedCost);
        var all = net * screensDue;
        if (net < 0 || fixedCost > all) return Estimate.Undefined(UndefinedReason.NeverPays);
        return fixedCost == 0 ? Estimate.Undefined(UndefinedReason.AlwaysPays) : Estimate.Point(fixedCost / all, Method);
    }

    private static double Gained(ScreenGain gain) => gain.Prevalence * gain.Sensitivity * gain.BenefitOfTruePositive;

    private static double Lost(ScreenGain gain) => (1 - gain.Prevalence) * (1 - gain.Specificity) * gain.CostOfFalsePositive;

    private static Estimate Ratio(double over, double under, UndefinedReason without)
    {
        if (under == 0) return Estimate.Undefined(without);
        var ratio = over / under;
        return ratio <= 1e15 ? Estimate.Point(ratio, Method) : Estimate.Undefined(UndefinedReason.TooLarge);
    }
}
