using ScreenStats.Statistics.Economics.Uncertainty.Information;

namespace ScreenStats.Statistics.Economics.Uncertainty.Ratios;

/// <summary>Cost for each effect from draws of both, with limits that stay honest where the effect may be nil.</summary>
/// <remarks>
/// <para>The value is mean cost over mean effect (not the mean of ratios, which a draw near 0 can send anywhere). For the limits the draws are put in order: those with an effect by their ratio, then
/// all without one, whose ratio says nothing: no price buys it. Limits are percentiles by nearest rank. Where more than the upper tail has no effect there is no upper limit; then speak of net benefit at a stated value, and
/// of the share of draws without an effect.</para>
/// <para>Source: the percentile method with ratios ordered by angle, Obenchain RL et al., Pharmacoeconomics 1997;11:459-472; Stinnett AA, Paltiel AD, Med Decis Making 1997;17:483-489 (both from memory).</para>
/// </remarks>
public static class DrawnRatio
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "percentiles-by-angle";

    /// <summary>Cost for each effect, or what is paid more for each effect more.</summary>
    /// <param name="draws">Costs and effects of an option, or their differences from another, draw by draw.</param>
    /// <param name="confidence">The confidence of the limits, in (0, 1).</param>
    /// <returns>
    /// The ratio with its limits. Undefined where the mean effect is 0 or less; with a lower limit alone where the effect is nil or a harm in more of the draws than the upper tail.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside (0, 1).</exception>
    public static Estimate Of(OptionDraws draws, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(draws);
        Guard.Confidence(confidence);
        var mean = draws.Mean;
        if (mean.Effect == 0) return Estimate.Undefined(UndefinedReason.NoEffect);
        if (mean.Effect < 0) return Estimate.Undefined(UndefinedReason.DoesHarm);
        var value = mean.Cost / mean.Effect;
        double[] ratios = [.. draws.Costs.Zip(draws.Effects, (cost, effect) => effect > 0 ? cost / effect : double.PositiveInfinity).Order()];
        var (lower, upper) = (At(ratios, (1 - confidence) / 2), At(ratios, 1 - ((1 - confidence) / 2)));
        if (!double.IsFinite(value)) return Estimate.Undefined(UndefinedReason.TooLarge);
        if (double.IsFinite(upper)) return Estimate.Of(value, new Interval(lower, upper).Including(value), Method, confidence);
        return double.IsFinite(lower) ? Estimate.Unbounded(Math.Min(lower, value), Method, confidence, UndefinedReason.MayDoNothing) : Estimate.Undefined(UndefinedReason.MayDoNothing);
    }

    /// <summary>The share of the draws in which the effect is nil or a harm.</summary>
    /// <param name="draws">Costs and effects, draw by draw.</param>
    /// <returns>The share, in [0, 1].</returns>
    public static double ShareWithoutEffect(OptionDraws draws)
    {
        ArgumentNullException.ThrowIfNull(draws);
        return draws.Effects.Count(effect => effect <= 0) / (double)draws.Effects.Length;
    }

    private static double At(double[] sorted, double fraction) => sorted[(int)Math.Clamp(Math.Ceiling((fraction * sorted.Length) - (1e-12 * sorted.Length)), 1, sorted.Length) - 1];
}
