using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>The columns that every table of proportions ends with.</summary>
internal static class ShareColumns
{
    /// <summary>Estimate, limits, method, confidence; then the widened limits, what widened them, and a remark.</summary>
    public static ImmutableArray<Column<TRow>> For<TRow>(Func<TRow, ProportionFinding> share) =>
    [
        new("estimate", "Share", Unit.Proportion, "Events divided by trials.", row => Number(share(row), share(row).Estimate)),
        new("lower", "Lower", Unit.Proportion, "Lower limit as if all trials were independent.", row => Number(share(row), share(row).Lower)),
        new("upper", "Upper", Unit.Proportion, "Upper limit as if all trials were independent.", row => Number(share(row), share(row).Upper)),
        new("method", "Method", Unit.Text, "Method of these limits.", row => Cell.Text(share(row).Method)),
        new("confidence", "Confidence", Unit.Proportion, "Confidence of all limits of the row.", row => Cell.Number(share(row).Confidence)),
        new("widened_lower", "Lower, widened", Unit.Proportion, "Lower limit widened because trials come in clusters.", row => Number(share(row), share(row).WidenedLower)),
        new("widened_upper", "Upper, widened", Unit.Proportion, "Upper limit widened because trials come in clusters.", row => Number(share(row), share(row).WidenedUpper)),
        new("design_effect", "Design effect", Unit.Ratio, "How many times the clusters raise the variance; at least 1.", row => Cell.Number(share(row).DesignEffect)) { Method = Methods.MethodNames.DesignEffect },
        new("clusters", "Clusters", Unit.Text, "The clusters with the largest design effect.", row => share(row).ClusterLevel is { } level ? Cell.Text(LevelNames.Of(level)) : Cell.Empty),
        new("cluster_count", "Number of clusters", Unit.Count, "How many of these clusters there are.", row => share(row).Clusters is { } count ? Cell.Count(count) : Cell.Empty),
        new("remark", "Remark", Unit.Text, "Few counts (fewer than 5 events or other trials), why limits could not be widened, and what is not in them because there are fewer than 5 sites or site-weeks.", row => Remark(share(row))),
        new("widened_method", "Method, widened", Unit.Text, "Method of the widened limits.", row => Cell.Text(Statistics.Clusters.WidenedInterval.MethodName)),
    ];

    private static Cell Number(ProportionFinding share, double? value) => Cell.NumberOr(value, share.EstimateUndefined ?? "nothing was counted");

    private static Cell Remark(ProportionFinding share)
    {
        if (share.Trials == 0) return Cell.Empty;
        var parts = new List<string>(2);
        if (share.FewCounts) parts.Add("few counts");
        if (share.DesignEffectUndefined is { } reason) parts.Add("not widened: " + reason);
        if (share.FewSites is not null) parts.Add("differences between these sites are not in the limits: fewer than 5");
        else if (share.FewSiteWeeks is not null) parts.Add("differences between these site-weeks are not in the limits: fewer than 5");
        return parts.Count == 0 ? Cell.Empty : Cell.Text(string.Join("; ", parts));
    }
}
