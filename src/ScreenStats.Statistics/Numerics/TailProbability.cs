namespace ScreenStats.Statistics.Numerics;

/// <summary>How likely a statistic is as large as seen.</summary>
public static class TailProbability
{
    /// <summary>The probability that a chi-square variable is at least as large.</summary>
    /// <param name="value">The value, finite, 0 or more.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, at least 1.</param>
    /// <returns>A probability in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static double ChiSquare(double value, long degreesOfFreedom)
    {
        Guard.Finite(value);
        ArgumentOutOfRangeException.ThrowIfNegative(value);
        ArgumentOutOfRangeException.ThrowIfLessThan(degreesOfFreedom, 1);
        return GammaTail.ChiSquareUpper(degreesOfFreedom, value);
    }

    /// <summary>The probability that a standard normal variable lies at least as far from 0, on either side.</summary>
    /// <param name="distance">The distance, finite, of either sign.</param>
    /// <returns>A probability in [0, 1].</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not finite.</exception>
    public static double Normal(double distance)
    {
        Guard.Finite(distance);
        return GammaTail.ChiSquareUpper(1, distance * distance);
    }
}
