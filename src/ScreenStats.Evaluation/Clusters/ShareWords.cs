using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>Words that go with every proportion.</summary>
internal static class ShareWords
{
    /// <summary>The mark of few counts, with a space before it; else nothing.</summary>
    public static string Few(ProportionFinding share) => share.FewCounts ? " [few counts]" : "";

    /// <summary>The confidence of the limits in brackets, and that they are widened where they are.</summary>
    public static string Limits(ProportionFinding share) =>
        Figure.Percent(share.Confidence) + " confidence" + (share.ClusterLevel is null ? "" : ", widened for clusters");

    /// <summary>Says by what the limits were widened, or why they were not.</summary>
    public static Sentence Widening(string path, ProportionFinding share)
    {
        if (share.ClusterLevel is not { } level) return new Sentence($"The limits are not widened for clusters: {share.DesignEffectUndefined}.");
        var (what, few) = (level switch
        {
            ClusterLevel.Persons => "the same people are tested again and again",
            ClusterLevel.Sites => "sites differ",
            _ => "sites and weeks differ",
        }, share.Clusters < Statistics.Clusters.WidenedInterval.ClustersForNormalQuantile);
        var end = few ? ", and only {1} of them are there to judge by" : " ({1} of them)";
        var wider = few ? ", which makes the limits wider still" : "";
        var things = LevelNames.Of(level);
        return share.DesignEffect > 1
            ? new Sentence(
                $"The limits are widened because {what}: what was counted tells as much as {{2}} independent trials would (design effect {{0}} over {things}{end}{wider}).",
                Figure.Number(path + ".designEffect", share.DesignEffect, Unit.Ratio), Figure.Count(path + ".clusters", share.Clusters ?? 0),
                Figure.Number(path + ".effectiveTrials", share.EffectiveTrials, Unit.Count))
            : new Sentence(
                $"People, sites and weeks do not differ more than chance makes them; the largest design effect is at most {{0}} (over {things}{end}).",
                Figure.Number(path + ".designEffect", share.DesignEffect, Unit.Ratio), Figure.Count(path + ".clusters", share.Clusters ?? 0));
    }
}
