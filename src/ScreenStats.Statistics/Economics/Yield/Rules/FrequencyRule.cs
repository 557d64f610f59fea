using System.Collections.Immutable;

namespace ScreenStats.Statistics.Economics.Yield.Rules;

/// <summary>A table that says how often people are screened by what screening last found.</summary>
public sealed class FrequencyRule
{
    /// <summary>Makes a rule.</summary>
    /// <param name="bands">One or more bands, the first from a yield of 0, each from a higher yield and more frequent than the last.</param>
    /// <param name="periodsToRise">Periods in a row above the band in force before screening becomes more frequent, 1 to 1,000.</param>
    /// <param name="periodsToFall">Periods in a row below it before screening becomes less frequent, 1 to 1,000.</param>
    /// <exception cref="ArgumentException">Bands that do not follow one another.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number of periods outside its domain.</exception>
    public FrequencyRule(IReadOnlyList<FrequencyBand> bands, int periodsToRise = 1, int periodsToFall = 1)
    {
        ArgumentNullException.ThrowIfNull(bands);
        if (bands.Count == 0 || bands[0].From != 0 || bands[0].BeginsAbove) throw new ArgumentException("The first band must begin with a yield of 0.", nameof(bands));
        for (var i = 1; i < bands.Count; i++)
        {
            if (bands[i].From < bands[i - 1].From || (bands[i].From == bands[i - 1].From && (!bands[i].BeginsAbove || bands[i - 1].BeginsAbove)))
                throw new ArgumentException("Each band must begin at a higher yield than the last.", nameof(bands));
            if (bands[i].EveryDays is not { } days || days >= (bands[i - 1].EveryDays ?? double.PositiveInfinity))
                throw new ArgumentException("Each band must have people screened more often than the last.", nameof(bands));
        }

        if (periodsToRise is < 1 or > 1000) throw new ArgumentOutOfRangeException(nameof(periodsToRise), periodsToRise, "The periods must lie between 1 and 1,000.");
        if (periodsToFall is < 1 or > 1000) throw new ArgumentOutOfRangeException(nameof(periodsToFall), periodsToFall, "The periods must lie between 1 and 1,000.");
        Bands = [.. bands];
        PeriodsToRise = periodsToRise;
        PeriodsToFall = periodsToFall;
    }

    /// <summary>The bands, the least frequent first.</summary>
    public ImmutableArray<FrequencyBand> Bands { get; }

    /// <summary>Periods in a row above the band in force before screening becomes more frequent.</summary>
    public int PeriodsToRise { get; }

    /// <summary>Periods in a row below it before screening becomes less frequent.</summary>
    public int PeriodsToFall { get; }

    /// <summary>The band that a yield lies in.</summary>
    /// <param name="share">The yield, in [0, 1].</param>
    /// <returns>Its place, from 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The yield is outside [0, 1].</exception>
    public int BandOf(double share)
    {
        Guard.Probability(share);
        var band = Bands.Length - 1;
        while (!Bands[band].Holds(share)) band--;
        return band;
    }
}
