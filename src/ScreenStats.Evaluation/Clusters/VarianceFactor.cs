using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>By how much a variance is raised where a method other than Wilson's is widened for clusters.</summary>
internal static class VarianceFactor
{
    /// <summary>The design effect, raised by the square of Student's quantile over the normal one where few clusters stand behind it.</summary>
    /// <param name="share">The share whose design effect it is.</param>
    /// <param name="confidence">The two-sided confidence of the limits, in (0, 1).</param>
    /// <remarks>The adjustment of the effective number of trials by Korn EL, Graubard BI, Surv Methodol 1998;24:193-201 (from memory).</remarks>
    public static double Of(ProportionFinding share, double confidence)
    {
        var ratio = Quantile(share.Clusters ?? 0) / Quantile(0);
        return share.DesignEffect * ratio * ratio;

        double Quantile(long clusters) => WidenedInterval.Wilson(share.Events, share.Trials, share.DesignEffect, clusters, confidence).Quantile;
    }

    /// <summary>The same for one limit that holds the whole confidence.</summary>
    /// <param name="share">The share whose design effect it is.</param>
    /// <param name="confidence">The one-sided confidence of the limit, in (0, 1).</param>
    /// <remarks>At 0.5 and below the limit does not lie beyond the estimate, and the design effect alone is used.</remarks>
    public static double OneSided(ProportionFinding share, double confidence) =>
        confidence > 0.5 ? Of(share, (2 * confidence) - 1) : share.DesignEffect;
}
