namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>How many people are in which state at one time.</summary>
/// <param name="Uninfected">At work, never infected.</param>
/// <param name="Exposed">At work, infected, not yet infectious and not yet detectable.</param>
/// <param name="Infectious">At work, infectious and detectable, without symptoms.</param>
/// <param name="FalsePositives">Isolated though not infected.</param>
/// <param name="TruePositives">Isolated, found by a screen, without symptoms.</param>
/// <param name="Symptomatic">Isolated with symptoms.</param>
/// <param name="Recovered">Recovered, immune.</param>
/// <param name="Died">Died of the infection.</param>
public readonly record struct CompartmentState(
    double Uninfected, double Exposed, double Infectious, double FalsePositives, double TruePositives, double Symptomatic, double Recovered, double Died)
{
    /// <summary>At work and screened: uninfected, exposed and infectious.</summary>
    public double Circulating => Uninfected + Exposed + Infectious;

    /// <summary>Isolated: false and true positives and those with symptoms.</summary>
    public double Isolated => FalsePositives + TruePositives + Symptomatic;

    /// <summary>Everybody, the dead included: the same at all times.</summary>
    public double People => Circulating + Isolated + Recovered + Died;
}
