using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Sojourn;

/// <summary>Screening for a slow condition whose time from detectable to evident (the sojourn) is exponential.</summary>
/// <remarks>
/// <para>Sojourn rate q = 1/mean; incidence J of detectable conditions per person and unit of time, long constant; a screen finds a detectable
/// condition with chance S, independently of others. Any one unit of time throughout. With x = q D:</para>
/// <para>yield of a first screen S J/q; incidence of evident cases at time t after it J (1 - S e^(-q t)); interval cases as a share of those that
/// would have become evident in the first gap 1 - S (1 - e^(-x))/x; share of all conditions that a screen every D finds once it has long gone on
/// S (1 - e^(-x))/(x (1 - (1 - S) e^(-x))).</para>
/// <para>Sources: Zelen M, Feinleib M, Biometrika 1969;56:601-614 (from memory); Walter SD, Day NE, Am J Epidemiol 1983;118:865-886 (abstract); derived anew
/// and checked by numerical integration.</para>
/// </remarks>
public static class ExponentialSojourn
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "exponential-sojourn";

    /// <summary>The share of people in whom a first screen finds the condition.</summary>
    /// <param name="sensitivity">The chance that a screen finds a detectable condition, in [0, 1].</param>
    /// <param name="meanSojourn">The mean sojourn, above 0 and at most 1e9.</param>
    /// <param name="incidence">New detectable conditions per person and unit of time, 0 or more.</param>
    /// <returns>S J/q; undefined where it exceeds 1: the incidence cannot have been so high for so long.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static Estimate FirstScreenYield(double sensitivity, double meanSojourn, double incidence)
    {
        Check(sensitivity, meanSojourn);
        Guard.Amount(incidence);
        return incidence * meanSojourn <= 1
            ? Estimate.Point(sensitivity * incidence * meanSojourn, Method)
            : Estimate.Undefined(UndefinedReason.TooLarge);
    }

    /// <summary>Cases that become evident per person and unit of time, at a time after a first screen.</summary>
    /// <param name="sensitivity">The chance that a screen finds a detectable condition, in [0, 1].</param>
    /// <param name="meanSojourn">The mean sojourn, above 0 and at most 1e9.</param>
    /// <param name="incidence">New detectable conditions per person and unit of time, 0 or more.</param>
    /// <param name="time">Time since that screen, from 0 to a billion.</param>
    /// <returns>J (1 - S e^(-q t)), from J (1 - S) up to J.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double IntervalIncidence(double sensitivity, double meanSojourn, double incidence, double time)
    {
        Check(sensitivity, meanSojourn);
        Guard.Amount(incidence);
        Guard.Days(time);
        var turns = time / meanSojourn;
        return incidence * ((1 - sensitivity) + (sensitivity * Gone(turns)));
    }

    /// <summary>Of the cases that would become evident in the gap after a first screen, the share that still do: interval cases.</summary>
    /// <param name="sensitivity">The chance that a screen finds a detectable condition, in [0, 1].</param>
    /// <param name="meanSojourn">The mean sojourn, above 0 and at most 1e9.</param>
    /// <param name="gap">Time to the next screen, from 0 to a billion.</param>
    /// <returns>1 - S (1 - e^(-x))/x, in [0, 1]; at a gap of 0 its limit, 1 - S.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double IntervalShare(double sensitivity, double meanSojourn, double gap)
    {
        Check(sensitivity, meanSojourn);
        Guard.Days(gap);
        var mean = MeanKept(gap / meanSojourn);
        return (1 - sensitivity) + (sensitivity * (1 - mean));
    }

    /// <summary>Of all conditions that become detectable, the share that a screen at every gap finds before they are evident.</summary>
    /// <param name="sensitivity">The chance that a screen finds a detectable condition, in [0, 1].</param>
    /// <param name="meanSojourn">The mean sojourn, above 0 and at most 1e9.</param>
    /// <param name="gap">Time from one screen to the next, from 0 to a billion; 0 stands for screening without pause.</param>
    /// <returns>S (1 - e^(-x))/(x (1 - (1 - S) e^(-x))), in [0, 1]; 0 at a sensitivity of 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double ProgramSensitivity(double sensitivity, double meanSojourn, double gap)
    {
        Check(sensitivity, meanSojourn);
        Guard.Days(gap);
        if (sensitivity == 0) return 0;
        var turns = gap / meanSojourn;
        var gone = Gone(turns);
        return Math.Min(1, sensitivity * MeanKept(turns) / (gone + (sensitivity * (1 - gone))));
    }

    /// <summary>The mean time by which a case that a screen finds is found before it would be evident (lead time), of a first screen.</summary>
    /// <param name="meanSojourn">The mean sojourn, above 0 and at most 1e9.</param>
    /// <param name="variance">The variance of the sojourn, 0 or more; that of an exponential sojourn is the mean squared.</param>
    /// <returns>(m² + variance)/(2 m): longer sojourns are met more often. For an exponential sojourn m itself, at later screens too.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double MeanLead(double meanSojourn, double variance)
    {
        Check(0, meanSojourn);
        if (!(variance is >= 0 and <= 1e18)) throw new ArgumentOutOfRangeException(nameof(variance), variance, "The variance must be a number from 0 to 1e18.");
        var lead = (meanSojourn / 2) + (variance / (2 * meanSojourn));
        return double.IsFinite(lead) ? lead : throw new ArgumentOutOfRangeException(nameof(variance), variance, "The variance is too large for so short a mean.");
    }

    private static double Gone(double turns) => -Precise.ExponentialMinusOne(-turns);

    /// <summary>(1 - e^(-x))/x.</summary>
    private static double MeanKept(double turns) => turns == 0 ? 1 : double.IsInfinity(turns) ? 0 : Gone(turns) / turns;

    private static void Check(double sensitivity, double meanSojourn)
    {
        Guard.Probability(sensitivity);
        if (!(meanSojourn is > 0 and <= 1e9))
            throw new ArgumentOutOfRangeException(nameof(meanSojourn), meanSojourn, "The mean sojourn must be a number above 0 and at most a billion.");
    }
}
