using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Regression;

namespace ScreenStats.Statistics.Trends.Smooths.Splines;

/// <summary>Counts with their usual link: binomial with the logit, Poisson with the logarithm.</summary>
internal enum SplineFamily
{
    Binomial,
    Poisson,
}

/// <summary>What a fit needs of a family.</summary>
internal static class SplineFamilies
{
    /// <summary>The logarithm of the likelihood but for what does not depend on the link.</summary>
    public static double LogLikelihood(this SplineFamily family, SplineCount count, double link) => family == SplineFamily.Binomial
        ? -(count.Events * LogisticRegression.SoftPlus(-link)) - ((count.Trials - count.Events) * LogisticRegression.SoftPlus(link))
        : (count.Events * link) - (count.Trials * Math.Exp(link));

    /// <summary>Observed less expected, and the weight: the slope and minus the curvature of the likelihood.</summary>
    public static (double Residual, double Weight) Slopes(this SplineFamily family, SplineCount count, double link)
    {
        if (family == SplineFamily.Poisson)
        {
            var expected = count.Trials * Math.Exp(link);
            return (count.Events - expected, expected);
        }

        var (p, q) = (LogitScale.Fraction(link), LogitScale.Fraction(-link));
        return ((count.Events * q) - ((count.Trials - count.Events) * p), count.Trials * p * q);
    }

    public static double Deviance(this SplineFamily family, SplineCount count, double link)
    {
        if (family == SplineFamily.Poisson) return 2 * Binomial.Deviance(count.Events, count.Trials * Math.Exp(link));
        var (p, q) = (LogitScale.Fraction(link), LogitScale.Fraction(-link));
        return 2 * (Binomial.Deviance(count.Events, count.Trials * p) + Binomial.Deviance(count.Trials - count.Events, count.Trials * q));
    }

    /// <summary>The logarithm of the likelihood of a model that fits each count, with the constants of the family.</summary>
    public static double Saturated(this SplineFamily family, SplineCount count)
    {
        var (x, n) = (count.Events, count.Trials);
        if (family == SplineFamily.Poisson) return x == 0 ? 0 : -Binomial.StirlingRemainder(x) - (0.5 * Math.Log(2 * Math.PI * x));
        return x == 0 || x == n ? 0 : Binomial.LogProbability(x, n, x / n, (n - x) / n);
    }

    public static double Rate(this SplineFamily family, double link) => family == SplineFamily.Poisson ? Math.Exp(link) : LogitScale.Fraction(link);
}
