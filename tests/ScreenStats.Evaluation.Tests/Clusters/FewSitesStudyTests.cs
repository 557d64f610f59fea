using ScreenStats.Statistics;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Tests.Clusters;

/// <summary>
/// How often limits hold with few sites, by rule and by question. A program of few sites is drawn again and again: each site has a share of its
/// own around 1 %, each of its 26 weeks one around that (intraclass correlation 0.001), 60 to 140 runs a week. Limits are asked two
/// questions: do they hold the share of these sites, and do they hold that of all sites such as these? System.Random with the seed stated.
/// </summary>
public sealed class FewSitesStudyTests(ITestOutputHelper output)
{
    private const double Share = 0.01;
    private const double WeekCorrelation = 0.001;
    private const int Weeks = 26;
    private const double Confidence = 0.95;

    /// <summary>200 programs a line in every run; set SCREENSTATS_FULL_STUDIES to 1 for 4,000.</summary>
    private static readonly int Programs = Environment.GetEnvironmentVariable("SCREENSTATS_FULL_STUDIES") == "1" ? 4_000 : 200;

    /// <summary>The rules that were weighed; the third is the one in force.</summary>
    private enum Rule
    {
        SitesAlways,
        SitesAlwaysNormalQuantile,
        SitesFromFive,
        SitesFromTen,
        LargerWithItsQuantileFromFive,
    }

    [Theory]
    [InlineData(2, 0)]
    [InlineData(3, 0)]
    [InlineData(4, 0)]
    [InlineData(2, 0.001)]
    [InlineData(3, 0.001)]
    [InlineData(4, 0.001)]
    [InlineData(2, 0.01)]
    [InlineData(3, 0.01)]
    [InlineData(4, 0.01)]
    public void With_fewer_than_five_sites_the_limits_hold_the_share_of_these_sites_and_are_of_use(int sites, double correlation)
    {
        var programs = Study(sites, correlation);
        var (these, _, width) = programs[Rule.SitesFromFive];

        // 95 % within four standard errors below; weeks and sites that differ only make the limits hold more often.
        these.Should().BeGreaterThan(0.95 - Errors);
        width.Should().BeLessThan(0.0065, "1 % is positive, and 40 to 80 positives tell that much");
        programs[Rule.SitesAlways].Width.Should().BeGreaterThanOrEqualTo(width);
        if (correlation > 0) programs[Rule.SitesAlways].Width.Should().BeGreaterThan(2 * width, "Student's quantile on one to three degrees of freedom");
    }

    [Theory]
    [InlineData(5, 0)]
    [InlineData(6, 0)]
    [InlineData(10, 0)]
    [InlineData(5, 0.001)]
    [InlineData(6, 0.001)]
    [InlineData(10, 0.001)]
    [InlineData(5, 0.01)]
    [InlineData(6, 0.01)]
    [InlineData(10, 0.01)]
    public void From_five_sites_on_the_limits_hold_the_share_of_all_such_sites_about_as_often_as_they_say(int sites, double correlation)
    {
        var (these, all, _) = Study(sites, correlation)[Rule.SitesFromFive];

        these.Should().BeGreaterThan(0.95 - Errors);
        all.Should().BeGreaterThan(0.92 - Errors, "a heavy-tailed distribution of sites costs up to three points");
    }

    private static double Errors => 4 * Math.Sqrt(0.95 * 0.05 / Programs);

    private Dictionary<Rule, (double These, double All, double Width)> Study(int sites, double correlation)
    {
        var random = new Random(20_261_125 + sites);
        var draws = Enumerable.Range(0, Programs).Select(_ => Draw(random, sites, correlation)).ToList();
        var results = new Dictionary<Rule, (double These, double All, double Width)>();
        foreach (var rule in Enum.GetValues<Rule>())
        {
            var limits = draws.Select(draw => (draw.These, Interval: Limits(rule, draw))).ToList();
            var these = limits.Count(one => one.Interval.Lower <= one.These && one.These <= one.Interval.Upper);
            var all = limits.Count(one => one.Interval.Lower <= Share && Share <= one.Interval.Upper);
            results[rule] = ((double)these / Programs, (double)all / Programs, limits.Select(one => one.Interval.Upper - one.Interval.Lower).Order().ElementAt(Programs / 2));
            output.WriteLine(FormattableString.Invariant(
                $"{sites} sites, correlation {correlation}, {rule}: these sites {results[rule].These:P1}, all such sites {results[rule].All:P1}, median width {results[rule].Width:P2}"));
        }

        return results;
    }

    private static Interval Limits(Rule rule, Drawn draw)
    {
        if (rule == Rule.SitesFromFive)
        {
            // The rule in force, through the same door as every finding.
            var finding = ClusteredProportion.Of(draw.Sites.Events, draw.Sites.Trials, Confidence, (ClusterLevel.Sites, draw.Sites), (ClusterLevel.SiteWeeks, draw.SiteWeeks));
            return new Interval(finding.WidenedLower!.Value, finding.WidenedUpper!.Value);
        }

        var (sites, weeks) = (DesignEffect.Of(draw.Sites), DesignEffect.Of(draw.SiteWeeks));
        var enough = sites.Clusters >= rule switch { Rule.LargerWithItsQuantileFromFive => 5, Rule.SitesFromTen => 10, _ => 2 };
        var larger = rule == Rule.LargerWithItsQuantileFromFive ? Factor(sites) > Factor(weeks) : sites.Raw > weeks.Raw;
        var leader = enough && larger ? sites : weeks;
        var clusters = leader == sites && rule == Rule.SitesAlwaysNormalQuantile ? WidenedInterval.ClustersForNormalQuantile : leader.Clusters;
        return WidenedInterval.Wilson(draw.Sites.Events, draw.Sites.Trials, leader.Value, clusters, Confidence).Interval!.Value;
    }

    private static double Factor(DesignEffectEstimate effect) => effect.Value * Math.Pow(WidenedInterval.Wilson(1, 10, 1, effect.Clusters, Confidence).Quantile, 2);

    private static Drawn Draw(Random random, int sites, double correlation)
    {
        ClusterSums bySite = default, byWeek = default;
        double expected = 0;
        for (var site = 0; site < sites; site++)
        {
            var own = Beta(random, Share, correlation);
            var runs = 60 + random.Next(81);
            long events = 0;
            for (var week = 0; week < Weeks; week++)
            {
                var share = Beta(random, own, WeekCorrelation);
                long found = 0;
                for (var run = 0; run < runs; run++) found += random.NextDouble() < share ? 1 : 0;
                byWeek = byWeek.With(runs, found);
                events += found;
            }

            bySite = bySite.With(runs * Weeks, events);
            expected += own * runs * Weeks;
        }

        return new Drawn(bySite, byWeek, expected / bySite.Trials);
    }

    private static double Beta(Random random, double mean, double correlation)
    {
        if (correlation == 0 || mean is <= 0 or >= 1) return mean;
        var size = (1 - correlation) / correlation;
        var (one, other) = (Gamma(random, mean * size), Gamma(random, (1 - mean) * size));
        return one + other > 0 ? one / (one + other) : mean;
    }

    /// <summary>Marsaglia and Tsang, ACM Trans Math Softw 2000;26:363-372 (from memory).</summary>
    private static double Gamma(Random random, double shape)
    {
        if (shape < 1) return Gamma(random, shape + 1) * Math.Pow(1 - random.NextDouble(), 1 / shape);
        var d = shape - (1.0 / 3);
        var c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            var v = Math.Pow(1 + (c * x), 3);
            if (v > 0 && Math.Log(1 - random.NextDouble()) < (0.5 * x * x) + d - (d * v) + (d * Math.Log(v))) return d * v;
        }
    }

    private sealed record Drawn(ClusterSums Sites, ClusterSums SiteWeeks, double These);
}
