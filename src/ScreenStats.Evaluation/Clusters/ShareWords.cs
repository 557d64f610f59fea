using System.Collections.Immutable;
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

    /// <summary>Says by what the limits were widened, or why they were not; and what is not in them because there are few sites.</summary>
    public static Sentence Widening(string path, ProportionFinding share)
    {
        var these = share.FewSites ?? share.FewSiteWeeks;
        ImmutableArray<FigureReference> count = these is { } number ? [Figure.Count(path + (share.FewSites is null ? ".fewSiteWeeks" : ".fewSites"), number)] : [];
        if (share.ClusterLevel is not { } level)
        {
            return new Sentence($"The limits are not widened for clusters: {share.DesignEffectUndefined}." + TheseSites(share, "{0}"), count);
        }

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
                $"The limits are widened because {what}: what was counted tells as much as {{2}} independent trials would (design effect {{0}} over {things}{end}{wider})."
                + TheseSites(share, "{3}"),
                [
                    Figure.Number(path + ".designEffect", share.DesignEffect, Unit.Ratio), Figure.Count(path + ".clusters", share.Clusters ?? 0),
                    Figure.Number(path + ".effectiveTrials", share.EffectiveTrials, Unit.Count), .. count,
                ])
            : new Sentence(
                $"{(these is not null ? "What is compared does not differ more than chance makes it" : "People, sites and weeks do not differ more than chance makes them")}; the largest design effect is at most {{0}} (over {things}{end})."
                + TheseSites(share, "{2}"),
                [Figure.Number(path + ".designEffect", share.DesignEffect, Unit.Ratio), Figure.Count(path + ".clusters", share.Clusters ?? 0), .. count]);
    }

    /// <summary>What is not in the limits because there are fewer than five sites or site-weeks, with a place for their number; else nothing.</summary>
    private static string TheseSites(ProportionFinding share, string number) => (share.FewSites, share.FewSiteWeeks) switch
    {
        (not null, null) => $" They speak of these {number} sites: so few cannot show how much sites differ, so differences between sites beyond those from week to week are not in the limits.",
        (not null, _) => $" They speak of these {number} sites in these weeks: so few cannot show how much sites and weeks differ, so that is not in the limits.",
        (null, not null) => $" They speak of these {number} site-weeks: so few cannot show how much weeks differ, so that is not in the limits.",
        _ => "",
    };
}
