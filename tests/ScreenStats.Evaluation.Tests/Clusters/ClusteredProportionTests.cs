using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Tests.Clusters;

public class ClusteredProportionTests
{
    // Rao and Scott 1992, Table 1 (rat litters): design effects 1.232495 and 3.952861, seen in a public help page of R.
    private static readonly (long, long)[] Control =
        [(13, 13), (12, 12), (9, 9), (9, 9), (8, 8), (8, 8), (13, 12), (12, 11), (10, 9), (10, 9), (9, 8), (13, 11), (5, 4), (7, 5), (10, 7), (10, 7)];

    private static readonly (long, long)[] Treated =
        [(12, 12), (11, 11), (10, 10), (9, 9), (11, 10), (10, 9), (10, 9), (9, 8), (9, 8), (5, 4), (9, 7), (7, 4), (10, 5), (6, 3), (10, 3), (7, 0)];

    [Fact]
    public void The_largest_design_effect_widens_and_is_named()
    {
        var share = ClusteredProportion.Of(
            112, 145, 0.95, (ClusterLevel.Persons, ClusterSums.From(Control)), (ClusterLevel.Sites, ClusterSums.From(Treated)));

        share.DesignEffect.Should().BeApproximately(3.952861, 5e-7);
        (share.ClusterLevel, share.Clusters).Should().Be((ClusterLevel.Sites, 16));
        share.EffectiveTrials.Should().BeApproximately(36.6822951074, 1e-9);
        // Sixteen clusters: Student's quantile, so wider than Wilson on the effective trials with the normal one (0.6149, 0.8782; R).
        share.WidenedLower.Should().BeLessThan(0.6149430909);
        share.WidenedUpper.Should().BeGreaterThan(0.8782374357);
        (share.WidenedLower < share.Lower && share.WidenedUpper > share.Upper).Should().BeTrue();
    }

    [Fact]
    public void Few_clusters_are_said_to_make_the_limits_wider_than_the_effective_number_alone_would()
    {
        var few = ClusteredProportion.Of(112, 145, 0.95, (ClusterLevel.Sites, ClusterSums.From(Treated)));
        var many = ClusteredProportion.Of(224, 290, 0.95, (ClusterLevel.Sites, ClusterSums.From([.. Treated, .. Treated])));

        ShareWords.Widening("share", few).Text.Should().Contain("tells as much as").And.Contain("wider still");
        ShareWords.Widening("share", many).Text.Should().Contain("tells as much as").And.NotContain("wider still");
    }

    [Fact]
    public void A_design_effect_below_1_is_taken_as_1_and_still_names_its_clusters()
    {
        var even = ClusterSums.From(Enumerable.Repeat((10L, 3L), 40));

        var share = ClusteredProportion.Of(120, 400, 0.95, (ClusterLevel.Sites, even));

        (share.DesignEffect, share.ClusterLevel, share.Clusters, share.DesignEffectUndefined).Should().Be((1, ClusterLevel.Sites, 40L, null));
        (share.WidenedLower, share.WidenedUpper).Should().Be((share.Lower, share.Upper));
    }

    [Theory]
    [InlineData(0, "no event")]
    [InlineData(50, "everything counted was an event")]
    public void With_no_event_or_only_events_the_limits_are_not_widened_and_it_is_said(long events, string why)
    {
        var sums = ClusterSums.From([(25, events / 2), (25, events - (events / 2))]);

        var share = ClusteredProportion.Of(events, 50, 0.95, (ClusterLevel.Sites, sums));

        (share.DesignEffect, share.ClusterLevel).Should().Be((1, null));
        share.DesignEffectUndefined.Should().Contain(why);
        (share.WidenedLower, share.WidenedUpper).Should().Be((share.Lower, share.Upper));
    }

    [Fact]
    public void Two_sites_that_differ_do_not_widen_the_limits_and_it_is_said_of_how_many_sites_they_speak()
    {
        var sites = ClusterSums.From([(5_000, 150), (5_000, 50)]);
        var weeks = ClusterSums.From([.. Enumerable.Repeat((500L, 15L), 9), (500, 15), .. Enumerable.Repeat((500L, 5L), 10)]);

        var share = ClusteredProportion.Of(200, 10_000, 0.95, (ClusterLevel.Sites, sites), (ClusterLevel.SiteWeeks, weeks));

        (share.ClusterLevel, share.Clusters, share.FewSites, share.FewSiteWeeks).Should().Be((ClusterLevel.SiteWeeks, 20L, 2L, null));
        (share.WidenedUpper - share.WidenedLower).Should().BeLessThan(0.02, "with the two sites it was 0.7");
        ShareWords.Widening("share", share).Text.Should().Contain("speak of these 2 sites").And.Contain("not in the limits");
        ShareColumns.For<ProportionFinding>(row => row).Single(column => column.Name == "remark").Value(share).ToString().Should().Contain("fewer than 5");
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    public void From_five_sites_on_they_widen(int sites)
    {
        var sums = ClusterSums.From(Enumerable.Range(1, sites).Select(site => (1_000L, 10L * site)));

        var share = ClusteredProportion.Of(sums.Events, sums.Trials, 0.95, (ClusterLevel.Sites, sums));

        share.FewSites.Should().Be(sites < 5 ? sites : null);
        (share.ClusterLevel == ClusterLevel.Sites).Should().Be(sites >= 5);
        (share.WidenedUpper > share.Upper).Should().Be(sites >= 5);
        if (sites < 5) share.DesignEffectUndefined.Should().Contain("fewer than five sites");
    }

    [Fact]
    public void Two_people_widen_however_few()
    {
        var share = ClusteredProportion.Of(10, 20, 0.95, (ClusterLevel.Persons, ClusterSums.From([(10, 9), (10, 1)])));

        (share.ClusterLevel, share.FewSites).Should().Be((ClusterLevel.Persons, null));
        share.WidenedUpper.Should().BeGreaterThan(share.Upper!.Value);
    }

    [Fact]
    public void Without_trials_the_estimate_is_undefined_with_its_reason()
    {
        var share = ClusteredProportion.Of(0, 0, 0.95);

        (share.Estimate, share.Lower, share.WidenedUpper, share.FewCounts).Should().Be((null, null, null, false));
        share.EstimateUndefined.Should().NotBeEmpty();
    }

    [Fact]
    public void One_frequent_positive_person_widens_the_programs_limits_by_the_sums_over_people()
    {
        var builder = new TallyCellsBuilder();
        for (var person = 0; person < 60; person++)
        {
            for (var week = 0; week < 10; week++)
                builder.Add($"p{person}", person < 3 ? Outcome.Positive : Outcome.Negative, person < 3 ? FollowUp.Unverified : FollowUp.None, person % 2 == 0 ? "North" : "South", day: 7 * week);
        }

        var share = Evaluator.Evaluate(builder.Tally(), new()).Positivity.Program;

        // By hand: m = 60 people with n = 10 each, 3 of them with x = 10; p = 0.05; v = m/((m-1)N²) Σ(x - np)² = 60/(59 · 600²) · 285.
        var v = 60.0 / (59 * 600.0 * 600.0) * ((3 * 9.5 * 9.5) + (57 * 0.5 * 0.5));
        share.ClusterLevel.Should().Be(ClusterLevel.Persons);
        share.DesignEffect.Should().BeApproximately(600 * v / (0.05 * 0.95), 1e-12);
        (share.Events, share.Trials).Should().Be((30, 600));
    }

    [Fact]
    public void Site_weeks_are_ISO_weeks_from_Monday()
    {
        var counter = new ClusterCounter();
        counter.Add("North", new DateOnly(2026, 1, 4), 10, 1);
        counter.Add("North", new DateOnly(2026, 1, 5), 10, 2);
        counter.Add("North", new DateOnly(2026, 1, 11), 10, 3);

        counter.SiteWeeks().Should().Be(ClusterSums.From([(10, 1), (20, 5)]));
        counter.Sites().Should().Be(ClusterSums.From([(30, 6)]));
    }
}
