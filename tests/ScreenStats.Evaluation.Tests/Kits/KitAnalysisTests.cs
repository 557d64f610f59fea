using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Kits;

public class KitAnalysisTests
{
    private static readonly ProgramSettings Two = new()
    {
        TimeZone = "Etc/UTC",
        Screens = [new ScreenSettings { Name = "a", Lots = ["A*"] }, new ScreenSettings { Name = "b", Lots = ["B*"] }, new ScreenSettings { Name = "never used", Lots = ["Z*"] }],
    };

    [Fact]
    public void Differences_are_those_of_Newcombes_table()
    {
        // Newcombe RG, Stat Med 1998;17:873-890, Table II row a, method 10: 56/70 and 48/80 (seen quoted).
        var contrast = Of(new ProgramSketch().Runs(Outcome.Positive, 56).Runs(Outcome.Negative, 14).Runs(Outcome.Positive, 48, lot: "B1").Runs(Outcome.Negative, 32, lot: "B1"))
            .Contrasts.Single(contrast => contrast.Measure == PersonMeasure.Positivity);

        contrast.Crude.Estimate.Should().BeApproximately(0.2, 1e-12);
        contrast.Crude.Lower.Should().BeApproximately(0.0524, 5e-5);
        contrast.Crude.Upper.Should().BeApproximately(0.3339, 5e-5);
        contrast.Crude.Method.Should().Be("newcombe");
        contrast.Within.Strata.Should().Be(1);
        contrast.Within.Estimate.Should().BeApproximately(0.2, 1e-12);
    }

    [Fact]
    public void Every_measure_has_its_own_trials_and_events()
    {
        var kit = Of(new ProgramSketch().Runs(Outcome.Negative, 90).Runs(Outcome.Positive, 4, FollowUp.Confirmed).Runs(Outcome.Positive, 5, FollowUp.Refuted)
            .Runs(Outcome.Positive, 1, FollowUp.Unverified).Runs(Outcome.Inconclusive, 2, FollowUp.Confirmed).Runs(Outcome.Invalid, 3)).Devices.Single();

        kit.Runs.Should().Be(105);
        (kit.Positivity.Events, kit.Positivity.Trials).Should().Be((10, 100));
        (kit.InvalidRuns.Events, kit.InvalidRuns.Trials).Should().Be((5, 105));
        (kit.RefutedRate.Events, kit.RefutedRate.Trials).Should().Be((5, 100));
        (kit.PredictiveValue.Events, kit.PredictiveValue.Trials).Should().Be((4, 9));
    }

    [Fact]
    public void A_difference_that_sites_explain_vanishes_within_them()
    {
        var findings = Of(new ProgramSketch()
            .Runs(Outcome.Negative, 891).Runs(Outcome.Positive, 9).Runs(Outcome.Negative, 99, lot: "B1").Runs(Outcome.Positive, 1, lot: "B1")
            .Runs(Outcome.Negative, 90, site: "South").Runs(Outcome.Positive, 10, site: "South").Runs(Outcome.Negative, 810, site: "South", lot: "B1").Runs(Outcome.Positive, 90, site: "South", lot: "B1"));
        var contrast = findings.Contrasts.Single(contrast => contrast.Measure == PersonMeasure.Positivity);

        contrast.Crude.Estimate.Should().BeApproximately(0.019 - 0.091, 1e-12);
        contrast.Within.Estimate.Should().BeApproximately(0, 1e-12);
        contrast.Within.LeavesOutZero.Should().BeFalse();
        (findings.SiteWeeks, findings.SharedSiteWeeks).Should().Be((2, 2));
    }

    [Fact]
    public void Devices_that_never_meet_are_compared_plainly_with_the_word_that_place_and_time_may_explain_it()
    {
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 100).Runs(Outcome.Positive, 5).Runs(Outcome.Negative, 100, lot: "B1", day: 7).Runs(Outcome.Positive, 5, lot: "B1", day: 7));

        findings.Contrasts[0].Crude.Estimate.Should().Be(0);
        findings.Contrasts[0].Within.EstimateUndefined.Should().Be("no site used both in the same week");
        findings.Sentences.Select(sentence => sentence.Text).Should().Contain(text => text.Contains("cannot be told apart", StringComparison.Ordinal));
    }

    [Fact]
    public void One_device_has_nothing_to_compare_and_runs_of_no_device_are_said()
    {
        Of(new ProgramSketch().Runs(Outcome.Negative, 10)).Sentences.Should().ContainSingle().Which.Text.Should().StartWith("One device was used (a)");
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 10).Runs(Outcome.Negative, 10, lot: "B1").Runs(Outcome.Negative, 3, lot: "C"));
        findings.RunsWithoutDevice.Should().Be(3);
        findings.Sentences[^1].Text.Should().StartWith("3 counted runs are of lots that no device");
    }

    [Fact]
    public void Without_a_flagged_lot_the_difference_is_taken_again_and_the_lot_is_named()
    {
        var sketch = new ProgramSketch();
        foreach (var lot in new[] { "A1", "A2", "B1", "B2", "B3" })
        {
            sketch.Runs(Outcome.Negative, 990, lot: lot).Runs(Outcome.Positive, lot == "B3" ? 60 : 2, FollowUp.Refuted, lot: lot);
        }

        var findings = Of(sketch);
        var contrast = findings.Contrasts.Single(contrast => contrast.Measure == PersonMeasure.Refuted);

        findings.FlaggedLots.Should().Equal("B3");
        contrast.Crude.LeavesOutZero.Should().BeTrue();
        contrast.CrudeWithoutFlaggedLots!.Estimate.Should().BeApproximately(0, 1e-12);
        contrast.WithinWithoutFlaggedLots!.SecondTrials.Should().Be(2 * 992);
        findings.Sentences.Select(sentence => sentence.Text).Should().Contain(text => text.Contains("this lot is flagged: B3", StringComparison.Ordinal));
    }

    [Fact]
    public void Sites_that_differ_widen_the_plain_limits()
    {
        var sketch = new ProgramSketch();
        foreach (var site in new[] { "a", "b", "c", "d", "e", "f" })
        {
            sketch.Runs(Outcome.Negative, 900, site: site).Runs(Outcome.Positive, site == "a" ? 100 : 10, site: site)
                .Runs(Outcome.Negative, 900, site: site, lot: "B1").Runs(Outcome.Positive, 10, site: site, lot: "B1");
        }

        var crude = Of(sketch).Contrasts[0].Crude;
        (crude.WidenedUpper - crude.WidenedLower).Should().BeGreaterThan(1.5 * (crude.Upper!.Value - crude.Lower!.Value));
    }

    private static KitFindings Of(ProgramSketch sketch) => Evaluator.Evaluate(sketch.Tally(), Two).Kits;
}
