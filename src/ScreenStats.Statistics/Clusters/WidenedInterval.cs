using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Clusters;

/// <summary>Intervals of a proportion whose trials come in clusters (people, sites, weeks).</summary>
public static class WidenedInterval
{
    /// <summary>The number of clusters from which the normal quantile is used.</summary>
    public const long ClustersForNormalQuantile = 30;

    /// <summary>
    /// The rule for few sites and weeks, wherever limits are widened: sites, and site-weeks, widen limits only where there are this many of
    /// them. With two to four, limits speak of these sites and weeks, and that must be said beside them.
    /// </summary>
    /// <remarks>
    /// <para>A variance between two sites has one degree of freedom; Student's quantile then is 12.7, and limits say nothing of sites that hardly
    /// differ. Programs of 2, 3 and 4 sites with 1 % positive, 26 weeks and 60 to 140 runs a site-week, drawn 4,000 times with an intraclass
    /// correlation between sites of 0, 0.001 and 0.01: with sites the median width was 0.4 to 22.9 points and the share of all such
    /// sites was held in 86 to 97 %; without them the width was 0.40 to 0.58 points, the share of these sites was held in 95.0 to 97.4 %, that of all
    /// such sites in 95, 73 and 35 %. From five sites on it is held in 92 to 97 % by the sites' own design effect, at widths of at most 2.2 points.</para>
    /// <para>Persons widen limits whatever their number: they can always be told from one another, and their runs are the reason to widen at all.</para>
    /// <para>Source: that few clusters cannot tell their own variance: Cameron AC, Miller DL, J Hum Resour 2015;50:317-372 (from memory). The number five is
    /// by the study above, made anew by the tests.</para>
    /// </remarks>
    public const long FewestGroups = 5;

    /// <summary>The name of the method in tables.</summary>
    public const string MethodName = "wilson-widened";

    /// <summary>Wilson's interval on the effective number of trials.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="designEffect">The design effect, 1 or more.</param>
    /// <param name="clusters">The number of clusters the design effect was computed from.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its widened interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, a design effect below 1, or a confidence outside (0, 1).</exception>
    /// <remarks>
    /// Wilson's formula with x/d of n/d. With 2 to 29 clusters z is Student's quantile on clusters - 1 degrees of freedom; with fewer
    /// than two, nothing is known of how clusters differ, and z is the normal quantile (say so beside the figure). Covers about
    /// the nominal share where the clusters are alike in size; less where one cluster holds most of the trials.
    /// Source: Rao JNK, Scott AJ, Biometrics 1992;48:577-585 (effective counts); Student's quantile after Korn EL, Graubard BI,
    /// Surv Methodol 1998;24:193-201 (from memory).
    /// </remarks>
    public static WidenedEstimate Wilson(long successes, long trials, double designEffect, long clusters, double confidence = 0.95)
    {
        Guard.Counts(successes, trials);
        Guard.DesignEffect(designEffect);
        Guard.NotNegative(clusters);
        Guard.Confidence(confidence);
        long? degreesOfFreedom = clusters is >= 2 and < ClustersForNormalQuantile ? clusters - 1 : null;
        var quantile = degreesOfFreedom is { } df ? Quantile.Student(confidence, df) : Quantile.Normal(confidence);
        Interval? interval = trials == 0
            ? null
            : ScoreInterval.Wilson(successes / designEffect, trials / designEffect, quantile).Including((double)successes / trials);
        return new WidenedEstimate(successes, trials, designEffect, clusters, confidence, degreesOfFreedom, quantile, interval);
    }

    /// <summary>Wilson's interval widened by a design effect with its own number of clusters.</summary>
    /// <param name="successes">Successes, 0 to <paramref name="trials"/>.</param>
    /// <param name="trials">Trials, 0 or more.</param>
    /// <param name="designEffect">The design effect.</param>
    /// <param name="confidence">Confidence in (0, 1), two-sided.</param>
    /// <returns>The proportion with its widened interval; undefined without trials.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Counts that cannot be, or a confidence outside (0, 1).</exception>
    public static WidenedEstimate Wilson(long successes, long trials, DesignEffectEstimate designEffect, double confidence = 0.95) =>
        Wilson(successes, trials, designEffect.Value, designEffect.Clusters, confidence);
}
