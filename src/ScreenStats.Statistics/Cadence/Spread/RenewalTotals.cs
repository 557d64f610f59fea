namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>Expected infections of a workplace over some days.</summary>
/// <param name="Imported">Infections brought in from outside.</param>
/// <param name="Inside">Infections passed on inside.</param>
public readonly record struct RenewalTotals(double Imported, double Inside)
{
    /// <summary>Both together.</summary>
    public double Infections => Imported + Inside;
}
