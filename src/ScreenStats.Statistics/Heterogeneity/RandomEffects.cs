using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>How much the figures of several groups differ beyond chance, and what that leaves of their mean.</summary>
public static class RandomEffects
{
    /// <summary>The random-effects summary of the logits of the groups' rates.</summary>
    /// <param name="groups">The groups; those without trials are left out.</param>
    /// <param name="method">How the variance between groups is estimated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The summary on the logit scale (see <see cref="EffectEstimate.Logit"/>).</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An unknown method or a confidence outside (0, 1).</exception>
    /// <remarks>With rates near 0 and few trials half an event added draws the groups together: a random-intercept model is then better.</remarks>
    public static RandomEffectsResult OfRates(
        IReadOnlyList<GroupCount> groups, BetweenVarianceMethod method = BetweenVarianceMethod.RestrictedMaximumLikelihood, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(groups);
        return Of([.. groups.Where(group => group.Trials > 0).Select(EffectEstimate.Logit)], method, confidence);
    }

    /// <summary>The random-effects summary of figures with known sampling variances.</summary>
    /// <param name="effects">The figures, in any order.</param>
    /// <param name="method">How the variance between groups is estimated.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The summary; with one figure its own interval and a reason why nothing is known of differences.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An unknown method or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// w = 1 / (v + τ²), mean Σwy / Σw, standard error 1 / sqrt(Σw). Maximum and restricted maximum likelihood look for every root of the slope of
    /// the profile on a lattice of τ² and keep the most likely, or 0. Limits of τ²: the values at which the generalized Q has chi-square's
    /// quantiles. Prediction: mean ± t(k - 2) sqrt(τ² + standard error²). Source: DerSimonian R, Laird N, Control Clin Trials 1986;7:177-188;
    /// Paule RC, Mandel J, J Res Natl Bur Stand 1982;87:377-385; Viechtbauer W, Stat Med 2007;26:37-52; Higgins JPT, Thompson SG, Spiegelhalter DJ,
    /// J R Stat Soc A 2009;172:137-159; Hartung J, Knapp G, Stat Med 2001;20:3875-3889 (from memory).
    /// </remarks>
    public static RandomEffectsResult Of(
        IReadOnlyList<EffectEstimate> effects, BetweenVarianceMethod method = BetweenVarianceMethod.RestrictedMaximumLikelihood, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(effects);
        Guard.Confidence(confidence);
        if (!Enum.IsDefined(method)) throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows.");
        if (effects.Count == 0) return Without(0, method, Estimate.Undefined(UndefinedReason.NoValues), UndefinedReason.NoValues);

        // Sums in one order whatever the order given.
        EffectEstimate[] y = [.. effects.OrderBy(effect => effect.Value).ThenBy(effect => effect.Variance)];
        var z = Quantile.Normal(confidence);
        var (common, commonWeight, q) = BetweenVariance.At(y, 0);
        var fixedEffect = Around(common, z / Math.Sqrt(commonWeight), "inverse variance, common effect", confidence);
        if (y.Length == 1) return Without(1, method, fixedEffect, UndefinedReason.FewerThanTwoGroups);
        var degrees = y.Length - 1;
        var tau = BetweenVariance.Estimate(y, method);
        var (mean, weight, spread) = BetweenVariance.At(y, tau);
        var error = 1 / Math.Sqrt(weight);
        var knapp = Math.Sqrt(spread / (degrees * weight));
        var squares = y.Sum(effect => 1 / (effect.Variance * effect.Variance));
        var typical = degrees * commonWeight / ((commonWeight * commonWeight) - squares);
        var prediction = y.Length < 3
            ? Estimate.Undefined(UndefinedReason.FewerThanThreeGroups)
            : Around(mean, Quantile.Student(confidence, y.Length - 2) * Math.Sqrt(tau + (error * error)), "prediction for another group", confidence);
        return new RandomEffectsResult(
            y.Length, method, fixedEffect, q, degrees, GammaTail.ChiSquareUpper(degrees, q), tau, BetweenVariance.Limits(y, confidence),
            tau / (tau + typical), q > 0 ? Math.Max(0, (q - degrees) / q) : 0, q / degrees, Around(mean, z * error, "random effects", confidence), error,
            Around(mean, Quantile.Student(confidence, degrees) * knapp, "random effects, Hartung-Knapp", confidence), knapp, prediction, null);
    }

    private static Estimate Around(double value, double half, string method, double confidence) => Estimate.Of(value, new Interval(value - half, value + half), method, confidence);

    private static RandomEffectsResult Without(int groups, BetweenVarianceMethod method, Estimate common, UndefinedReason reason)
    {
        var undefined = Estimate.Undefined(reason);
        return new RandomEffectsResult(groups, method, common, null, null, null, null, null, null, null, null, undefined, null, undefined, null, undefined, reason);
    }
}
