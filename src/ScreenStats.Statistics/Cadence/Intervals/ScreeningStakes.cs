namespace ScreenStats.Statistics.Cadence.Intervals;

/// <summary>What is at stake in choosing an interval: infections coming in, what a day less of them is worth, what a screen costs.</summary>
public sealed record ScreeningStakes
{
    /// <summary>Makes the stakes.</summary>
    /// <param name="incidence">Infections per person-day, in [0, 1].</param>
    /// <param name="valuePerInfectiousDay">What one infectious day less is worth, in the unit of money of the costs; 0 or more.</param>
    /// <param name="costPerScreen">What a screen costs, what follows false positives included (<see cref="CostPerScreen(double, double, double)"/>); 0 or more.</param>
    /// <param name="windowDays">Days of infectiousness that isolation can still take away: the window less the delay, W = L - d; 0 or more.</param>
    /// <param name="sensitivity">The chance that a screen within the window is positive, in [0, 1].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public ScreeningStakes(double incidence, double valuePerInfectiousDay, double costPerScreen, double windowDays, double sensitivity = 1)
    {
        Guard.Probability(incidence);
        Guard.Amount(valuePerInfectiousDay);
        Guard.Amount(costPerScreen);
        Guard.Days(windowDays);
        Guard.Probability(sensitivity);
        Incidence = incidence;
        ValuePerInfectiousDay = valuePerInfectiousDay;
        CostOfScreen = costPerScreen;
        WindowDays = windowDays;
        Sensitivity = sensitivity;
    }

    /// <summary>Infections per person-day.</summary>
    public double Incidence { get; }

    /// <summary>What one infectious day less is worth.</summary>
    public double ValuePerInfectiousDay { get; }

    /// <summary>What a screen costs, what follows false positives included.</summary>
    public double CostOfScreen { get; }

    /// <summary>Days of infectiousness that isolation can still take away.</summary>
    public double WindowDays { get; }

    /// <summary>The chance that a screen within the window is positive.</summary>
    public double Sensitivity { get; }

    /// <summary>What a screen costs with what its false positives cost.</summary>
    /// <param name="costOfTest">The test itself, 0 or more.</param>
    /// <param name="specificity">The specificity, in [0, 1].</param>
    /// <param name="costOfFalsePositive">A false positive: confirmatory test, days lost; 0 or more.</param>
    /// <returns>c + (1 - Sp) h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double CostPerScreen(double costOfTest, double specificity, double costOfFalsePositive)
    {
        Guard.Amount(costOfTest);
        Guard.Probability(specificity);
        Guard.Amount(costOfFalsePositive);
        return costOfTest + ((1 - specificity) * costOfFalsePositive);
    }
}
