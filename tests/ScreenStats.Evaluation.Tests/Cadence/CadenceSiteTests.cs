using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Incidences;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceSiteTests
{
    private static readonly InfectionWindows Windows = new(2, 12, 3, 9);
    private static readonly CadenceSettings Plans = CadenceSketch.Exact with
    {
        Participation = null,
        Planned = new CadenceOptionSettings { Name = "weekly", EveryDays = 7 },
        PlannedAt = [new SitePlanSettings(["South"], new CadenceOptionSettings { Name = "every fourth day", EveryDays = 4 })],
    };

    [Fact]
    public void Where_every_site_did_what_it_had_planned_nothing_is_lost()
    {
        var findings = Cadence(Plans);
        foreach (var measure in new[] { "detection", "share-removed", "infectious-days-removed" })
            findings.Adherence.Single(row => row.Measure == measure).Share.Estimate.Should().BeApproximately(1, 1e-9, measure);
        double Found(double days) => ScreeningYield.DetectionProbability(new ScreeningRoutine(days, 0.6), Windows);
        // Person-days: 20 people of 14 weeks less one in the North, 30 of 19 gaps of 4 days in the South.
        var (north, south) = (20 * 13 * 7, 30 * 19 * 4);
        var expected = ((north * Found(7)) + (south * Found(4))) / (north + south);
        findings.Value(CadenceOptionFinding.AsDone, CadenceMeasure.Detection).Should().BeApproximately(expected, 1e-9);
        var drawn = findings.Outcome(CadenceOptionFinding.AsDone, CadenceMeasure.Detection)!.Figure;
        drawn.Lower.Should().BeApproximately(expected, 2e-3, "the draws have the sites too");
    }

    [Fact]
    public void The_exposure_is_that_of_each_site_under_its_own_gaps()
    {
        var findings = Cadence(CadenceSketch.Exact with { Incidence = null });
        var course = InfectionCourse.Windows(Windows, 0.6);
        double Exposure(long people, int gap, long count) => WorkplaceIncidence.Of(0, people, [new ObservedGap(gap, count)], course, new ScreeningRules()).Exposure;
        findings.Inputs.Incidence.Estimate.Should().BeApproximately(2 / (Exposure(20, 7, 20 * 13) + Exposure(30, 4, 30 * 19)), 1e-12);
        findings.Inputs.Incidence.Lower.Should().BeLessThan(findings.Inputs.Incidence.Estimate!.Value).And.BeGreaterThan(0.1 * findings.Inputs.Incidence.Estimate.Value);
    }

    [Fact]
    public void What_was_found_per_person_day_has_limits_widened_as_the_cases_cluster()
    {
        // Six sites, all cases at one of them in one week.
        var builder = new TallyCellsBuilder();
        for (var person = 0; person < 60; person++)
        {
            for (var week = 0; week < 12; week++)
            {
                var positive = week == 6 && person < 9;
                builder.Add($"p{person}", positive ? Outcome.Positive : Outcome.Negative, positive ? FollowUp.Confirmed : FollowUp.None, site: $"S{person / 10}", day: 7 * week);
            }
        }

        var found = builder.Tally().Cadence(CadenceSketch.Exact with { Incidence = null }).Inputs.FoundPerPersonDay;
        var plain = Statistics.Proportions.ProportionInterval.Wilson(9, 60 * 11 * 7);
        found.Estimate.Should().BeApproximately(9.0 / (60 * 11 * 7), 1e-15);
        (found.Upper!.Value - found.Lower!.Value).Should().BeGreaterThan(1.3 * (plain.Upper!.Value - plain.Lower!.Value));
        found.Method.Should().Be(WidenedInterval.MethodName);
    }

    /// <summary>Twenty people each week in the North, thirty each fourth day in the South, each with a case at the end.</summary>
    private static CadenceFindings Cadence(CadenceSettings settings)
    {
        var builder = new TallyCellsBuilder();
        Site("North", 20, 14, 7);
        Site("South", 30, 20, 4);
        return builder.Tally().Cadence(settings);

        void Site(string site, int people, int screens, int every)
        {
            for (var person = 0; person < people; person++)
            {
                for (var screen = 0; screen < screens; screen++)
                {
                    var found = person == 0 && screen == screens - 1;
                    builder.Add($"{site}{person}", found ? Outcome.Positive : Outcome.Negative, found ? FollowUp.Confirmed : FollowUp.None, site: site, day: screen * every);
                }
            }
        }
    }
}
