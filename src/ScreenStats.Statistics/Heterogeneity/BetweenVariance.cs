using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>The variance between groups by each method, for two figures or more.</summary>
internal static class BetweenVariance
{
    /// <summary>The weighted mean at a variance between groups, the sum of the weights, and the weighted squares around the mean.</summary>
    public static (double Mean, double Weight, double Squares) At(EffectEstimate[] y, double tau)
    {
        double weight = 0, sum = 0, squares = 0;
        foreach (var effect in y)
        {
            var w = 1 / (effect.Variance + tau);
            weight += w;
            sum += w * effect.Value;
        }

        var mean = sum / weight;
        foreach (var effect in y) squares += (effect.Value - mean) * (effect.Value - mean) / (effect.Variance + tau);
        return (mean, weight, squares);
    }

    public static double Estimate(EffectEstimate[] y, BetweenVarianceMethod method) => method switch
    {
        BetweenVarianceMethod.DerSimonianLaird => DerSimonianLaird(y),
        BetweenVarianceMethod.PauleMandel => Profile(y, y.Length - 1),
        BetweenVarianceMethod.HedgesOlkin => HedgesOlkin(y),
        BetweenVarianceMethod.MaximumLikelihood => Likelihood(y, restricted: false),
        _ => Likelihood(y, restricted: true),
    };

    public static Interval Limits(EffectEstimate[] y, double confidence)
    {
        var tail = (1 - confidence) / 2;
        return new Interval(
            Profile(y, GammaTail.ChiSquareQuantile(y.Length - 1, tail, upperTail: true)),
            Profile(y, GammaTail.ChiSquareQuantile(y.Length - 1, tail, upperTail: false)));
    }

    /// <summary>The variance at which the weighted squares, which fall as it grows, are the given figure; 0 where they are never as large.</summary>
    private static double Profile(EffectEstimate[] y, double squares)
    {
        if (At(y, 0).Squares <= squares) return 0;
        var high = y.Min(effect => effect.Variance);
        while (At(y, high).Squares > squares) high *= 4;
        return Root.Between(tau => At(y, tau).Squares - squares, 0, high);
    }

    private static double DerSimonianLaird(EffectEstimate[] y)
    {
        var (_, weight, q) = At(y, 0);
        return Math.Max(0, (q - (y.Length - 1)) / (weight - (y.Sum(effect => 1 / (effect.Variance * effect.Variance)) / weight)));
    }

    private static double HedgesOlkin(EffectEstimate[] y)
    {
        var mean = y.Average(effect => effect.Value);
        return Math.Max(0, (y.Sum(effect => (effect.Value - mean) * (effect.Value - mean)) / (y.Length - 1)) - y.Average(effect => effect.Variance));
    }

    private static double Likelihood(EffectEstimate[] y, bool restricted)
    {
        double Slope(double logTau)
        {
            var tau = Math.Exp(logTau);
            var (mean, weight, _) = At(y, tau);
            double squares = 0, slope = 0;
            foreach (var effect in y)
            {
                var w = 1 / (effect.Variance + tau);
                squares += w * w;
                slope += w * w * (effect.Value - mean) * (effect.Value - mean);
            }

            return slope - weight + (restricted ? squares / weight : 0);
        }

        double Log(double tau)
        {
            var (_, weight, squares) = At(y, tau);
            return -0.5 * (squares + y.Sum(effect => Math.Log(effect.Variance + tau)) + (restricted ? Math.Log(weight) : 0));
        }

        var low = Math.Log(y.Min(effect => effect.Variance)) - 18;
        var high = Math.Log(y.Max(effect => effect.Variance) + (y[^1].Value - y[0].Value) * (y[^1].Value - y[0].Value)) + 2;
        const int Steps = 200;
        double best = 0, bestLog = Log(0);
        var before = Slope(low);
        for (var step = 1; step <= Steps; step++)
        {
            var (from, to) = (low + ((high - low) * (step - 1) / Steps), low + ((high - low) * step / Steps));
            var slope = Slope(to);
            if (before > 0 && slope <= 0)
            {
                var tau = Math.Exp(Root.Between(Slope, from, to));
                if (Log(tau) > bestLog) (best, bestLog) = (tau, Log(tau));
            }

            before = slope;
        }

        return best;
    }
}
