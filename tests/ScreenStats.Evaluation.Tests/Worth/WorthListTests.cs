using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Worth;

namespace ScreenStats.Evaluation.Tests.Worth;

public class WorthListTests
{
    private static readonly CadenceOptionSettings Weekly = CadenceWords.Usual.Single(option => option.Name == "weekly");
    private static readonly CadenceOptionSettings Daily = CadenceWords.Usual.Single(option => option.Name == "daily");
    private static readonly CadenceOptionSettings None = CadenceWords.Usual.Single(option => option.IsNone);

    [Fact]
    public void The_rule_of_frequency_looks_back_one_period()
    {
        // Five positives of 40 tests fall into the last of 14 weeks, none before.
        var rules = WorthSketch.Exact with { Rules = [new FrequencyRuleSettings(null, None), new FrequencyRuleSettings(0.05, Weekly), new FrequencyRuleSettings(0.2, Daily)] };
        var findings = CadenceSketch.Program().Worth(rules);
        findings.Rules.Length.Should().Be(14);
        findings.Rules.Take(13).Should().OnlyContain(period => period.Tests == 40 && period.Positives == 0 && period.Positivity.Estimate == 0 && period.Next == "none");
        findings.Rules[0].InForce.Should().Be("weekly", "that is nearest to what was done");
        findings.Rules[1].InForce.Should().Be("none");
        findings.Rules[^1].Should().Match<Evaluation.Worth.Lists.WorthRulePeriod>(period => period.Positives == 5 && period.InForce == "none" && period.Next == "weekly" && !period.IsSure && period.Days == 1);
        findings.Figure("screens-per-person", "rule")!.Figure.Estimate.Should().Be(1);
        findings.Figure("screens-per-person", "as-done")!.Figure.Estimate!.Value.Should().BeApproximately(((13 * 7) + 1) / 7.0, 1e-9);
        CadenceSketch.Program().Worth().Rules.Should().BeEmpty();
        CadenceSketch.Program().Worth().Missing.Should().Contain(text => text.StartsWith("costs.rules"));
    }

    [Fact]
    public void A_faulty_lot_does_not_drive_the_rule_unsaid()
    {
        // Of 60 people in eight weeks the third had 20 with a lot of which 12 were refuted; nobody was infected.
        var rules = WorthSketch.Exact with { Rules = [new FrequencyRuleSettings(null, None), new FrequencyRuleSettings(0.05, Weekly), new FrequencyRuleSettings(0.15, Daily)] };
        var findings = Faulty().Worth(rules);
        findings.Rules.Select(period => period.InForce).Should().Equal("weekly", "none", "none", "daily", "none", "none", "none", "none");
        findings.Rules.Select(period => period.WithoutFlaggedLots!.InForce).Should().Equal("weekly", "none", "none", "none", "none", "none", "none", "none");
        findings.Rules[2].Should().Match<Evaluation.Worth.Lists.WorthRulePeriod>(period => period.Tests == 60 && period.Positives == 12 && period.WithoutFlaggedLots!.Tests == 40 && period.WithoutFlaggedLots.Positives == 0);
        findings.RuleLots.Should().Be(new Evaluation.Worth.Lists.WorthRuleLots(8, 1, 0, 1));
        findings.Figure("screens-per-person", "rule-without-flagged-lots")!.Figure.Estimate.Should().Be(findings.Figure("screens-per-person", "rule")!.Figure.Estimate - 7);
        findings.Text().Should().Contain("In 1 of the 8 periods it would have had people screened more often because of a flagged lot: without the runs of a flagged lot it asks for 1.00 screens.");

        var sound = CadenceSketch.Program().Worth(rules);
        sound.RuleLots.Should().BeNull();
        sound.Rules.Should().OnlyContain(period => period.WithoutFlaggedLots == null);
        sound.Text().Should().NotContain("flagged");
    }

    [Fact]
    public void The_decision_curve_is_widened_for_sites_and_weeks_and_taken_without_flagged_lots()
    {
        // All positives fall into one week of 14: five independent ones would tell more.
        foreach (var point in CadenceSketch.Program().Worth().DecisionCurve)
        {
            var plain = Statistics.Economics.Decision.DecisionCurve.Of(new Statistics.Economics.Decision.DecisionCounts(2, 3, 560), [point.Threshold]).Single().Screen;
            point.Screened.Lower!.Value.Should().BeLessThan(1000 * plain.Lower!.Value);
            point.Screened.Upper!.Value.Should().BeGreaterThan(1000 * plain.Upper!.Value);
            point.Screened.Method.Should().Be("wilson-widened-square-and-add");
            point.WithoutFlaggedLots.Should().BeNull();
        }

        // The lot of which all twelve were refuted: without it nothing is sent away for nothing, and nobody is found.
        var curve = Faulty().Worth().DecisionCurve;
        curve.Should().OnlyContain(point => point.Screened.Estimate < 0);
        curve.Should().OnlyContain(point => point.WithoutFlaggedLots == null, "of the other lots no positive has a conclusion");
        foreach (var point in Faulty(confirmed: 2).Worth().DecisionCurve)
        {
            point.Screened.Estimate!.Value.Should().BeApproximately(1000 * ((2 / 480.0) - (12 / 480.0 * point.Threshold / (1 - point.Threshold))), 1e-9);
            point.WithoutFlaggedLots!.Screened.Estimate!.Value.Should().BeApproximately(1000 * 2 / 460.0, 1e-9);
            point.WithoutFlaggedLots.Screened.Lower!.Value.Should().BeLessThan(point.WithoutFlaggedLots.Screened.Estimate!.Value);
        }
    }

    [Fact]
    public void The_decision_curve_weighs_one_found_against_as_many_sent_away_as_the_threshold_says()
    {
        // 560 tests, two confirmed and three refuted.
        var findings = CadenceSketch.Program().Worth();
        foreach (var point in findings.DecisionCurve)
        {
            var odds = point.Threshold / (1 - point.Threshold);
            point.Screened.Estimate!.Value.Should().BeApproximately(1000 * ((2 / 560.0) - (3 / 560.0 * odds)), 1e-9);
            var infected = 2 / 560.0 / 0.6;
            point.Everyone.Estimate!.Value.Should().BeApproximately(1000 * (infected - ((1 - infected) * odds)), 1e-6);
            var (screen, all) = (point.Screened.Estimate!.Value, point.Everyone.Estimate!.Value);
            point.Best.Should().Be(all > Math.Max(screen, 0) ? "everyone" : screen > 0 ? "screen" : "no-one");
        }

        findings.DecisionCurve.Select(point => point.Best).Should().ContainInOrder("screen", "no-one");
        CadenceSketch.Program(confirmed: 0, refuted: 0, unsettled: 3).Worth().DecisionCurve.Should().BeEmpty();
        CadenceSketch.Program(confirmed: 0, refuted: 0, confirmatory: false).Worth().DecisionCurve.Should().BeEmpty();
    }

    [Fact]
    public void Both_lists_are_whole_and_say_not_stated_where_nothing_is()
    {
        var bare = CadenceSketch.Program().Worth(new CostSettings(), new CadenceSettings(), settings => settings with { Policy = new PolicySettings() });
        Items(bare, "wilson-jungner").Should().Equal(Enumerable.Range(1, 10));
        Items(bare, "cheers-2022").Should().Equal(Enumerable.Range(1, 28));
        foreach (var item in new[] { 3, 4, 5, 6, 8, 13, 14, 15, 18, 19, 21, 23, 24, 25, 26, 27, 28 }) Cheers(bare, item).Should().Be(("not stated", ""), item.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Criterion(bare, 7).Answer.Should().Be("for people to say");
        Criterion(bare, 9).Answer.Should().Be("for people to say");

        var told = CadenceSketch.Program().Worth(WorthSketch.Exact with { Perspective = "employer", Report = new EvaluationStatements { Funding = "the works council", Conflicts = "none", Comparators = "what can be staffed" } });
        Cheers(told, 7).Evidence.Should().Be("compared: none, weekly, twice-weekly, daily; what can be staffed");
        Cheers(told, 8).Should().Be(("stated", "employer"));
        Cheers(told, 15).Should().Be(("stated", "EUR at prices of 2025, not converted"));
        Cheers(told, 27).Should().Be(("stated", "the works council"));
        Criterion(told, 4).Answer.Should().Be("met", "detectable from day 2 and acted on half a day later, infectious from day 3");
        Criterion(told, 9).Answer.Should().BeOneOf("met", "not met");
        Criterion(told, 10).Answer.Should().Be("met");
    }

    [Fact]
    public void A_criterion_follows_its_figure()
    {
        var late = WorthSketch.Cadence with { DelayDays = new StatedRange(2) };
        Criterion(CadenceSketch.Program().Worth(cadence: late), 4).Answer.Should().Be("in part", "it is found after people begin to pass it on, and before they cease to");
        Criterion(CadenceSketch.Program().Worth(cadence: WorthSketch.Cadence with { DelayDays = new StatedRange(9) }), 4).Answer.Should().Be("not met");
        Criterion(CadenceSketch.Program().Worth(cadence: WorthSketch.Cadence with { Sensitivity = new StatedAccuracy(0.9, null, null, null, null) }), 5).Answer.Should().Be("met");
        Criterion(CadenceSketch.Program().Worth(cadence: WorthSketch.Cadence with { Sensitivity = new StatedAccuracy(0.3, null, null, null, null) }), 5).Answer.Should().Be("not met");
        Criterion(CadenceSketch.Program(unsettled: 5).Worth(), 3).Answer.Should().Be("in part");
        Criterion(CadenceSketch.Program().Worth(), 3).Answer.Should().Be("met");
    }

    [Fact]
    public void An_item_of_the_reporting_list_is_stated_only_where_all_of_it_is()
    {
        var told = CadenceSketch.Program().Worth(WorthSketch.Exact with { PriceYear = null, InfectionAverted = new StatedRange(4000, Source: "a board's vote") });
        Cheers(told, 1).Answer.Should().Be("in part", "the title of the report names no economic evaluation");
        Cheers(told, 7).Should().Be(("in part", "compared: none, weekly, twice-weekly, daily; why these is not stated"));
        Cheers(told, 9).Should().Be(("in part", "91 days; why so long is not stated"));
        Cheers(told, 10).Should().Be(("stated", "nothing is discounted; nothing falls after the first year"));
        Cheers(told, 13).Should().Be(("stated", "4,000 EUR for one infection averted; a board's vote"));
        Cheers(told, 15).Should().Be(("in part", "EUR; of what year is not stated"));
        Cheers(told, 16).Answer.Should().Be("in part");
        Cheers(told, 22).Should().Be(("in part", "values, ranges and sources stand in the tables of assumptions and costs; not every stated figure has a source"));
        Cheers(told, 23).Answer.Should().Be("stated");
        Cheers(CadenceSketch.Program().Worth(cadence: WorthSketch.Cadence with { Days = 730 }), 10).Should().Be(("in part", "nothing is discounted; why is not stated"));
        var free = CadenceSketch.Program().Worth(new CostSettings());
        foreach (var item in new[] { 2, 13, 14, 15, 24 }) Cheers(free, item).Answer.Should().Be("not stated", "{0}", item);
        foreach (var item in new[] { 17, 20, 22, 23 }) Cheers(free, item).Answer.Should().Be("in part", "{0}: the effects are known and no cost is", item);
    }

    [Fact]
    public void A_stage_before_the_harm_is_met_only_where_the_ranges_lie_apart()
    {
        var overlapping = WorthSketch.Cadence with { Course = CadenceSketch.Windows with { DetectableFrom = new StatedRange(2, 1.5, 3), InfectiousFrom = new StatedRange(3, 2, 4) } };
        var (answer, evidence) = Criterion(CadenceSketch.Program().Worth(cadence: overlapping), 4);
        answer.Should().Be("in part", "the centres lie apart and the ranges do not");
        evidence.Should().Contain("detectable from day 2 (1.5 to 3)").And.Contain("infectious from day 3 (2 to 4)").And.Contain("\"weekly\" finds").And.Contain("of the infected before they pass it on");
    }

    private static Tally Faulty(int confirmed = 0)
    {
        var builder = new TallyCellsBuilder();
        for (var week = 0; week < 8; week++)
        {
            for (var person = 0; person < 60; person++)
            {
                var (lot, followUp) = (week == 2 && person < 20 ? "L-X" : "L-1", week == 2 && person < 12 ? FollowUp.Refuted : week == 7 && person >= 60 - confirmed ? FollowUp.Confirmed : FollowUp.None);
                builder.Add(FormattableString.Invariant($"p{person}"), followUp == FollowUp.None ? Outcome.Negative : Outcome.Positive, followUp, lot: lot, day: 7 * week);
            }
        }

        return builder.Tally();
    }

    private static IEnumerable<int> Items(WorthFindings findings, string list) => findings.Criteria.Where(row => row.List == list).Select(row => row.Item);

    private static (string Answer, string Evidence) Cheers(WorthFindings findings, int item) => findings.Criteria.Where(row => row.List == "cheers-2022" && row.Item == item).Select(row => (row.Answer, row.Evidence)).Single();

    private static (string Answer, string Evidence) Criterion(WorthFindings findings, int item) => findings.Criteria.Where(row => row.List == "wilson-jungner" && row.Item == item).Select(row => (row.Answer, row.Evidence)).Single();
}
