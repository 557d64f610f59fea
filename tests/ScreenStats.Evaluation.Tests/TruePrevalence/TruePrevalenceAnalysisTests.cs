using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.TruePrevalence;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Evaluation.Tests.TruePrevalence;

public class TruePrevalenceAnalysisTests
{
    private static readonly ProgramSettings OneDevice = new()
    {
        TimeZone = "Etc/UTC",
        Screens = [new ScreenSettings { Name = "one", Sensitivity = Counts(160, 200), Specificity = Counts(995, 1000) }],
    };

    private static readonly ProgramSettings TwoDevices = OneDevice with
    {
        Screens =
        [
            new ScreenSettings { Name = "a", Lots = ["A*"], Sensitivity = Counts(160, 200), Specificity = Counts(995, 1000) },
            new ScreenSettings { Name = "b", Lots = ["B*"], Sensitivity = Counts(120, 200), Specificity = Counts(960, 1000) },
        ],
    };

    [Fact]
    public void One_device_gives_the_correction_of_the_statistics()
    {
        var program = Of(new ProgramSketch().Runs(Outcome.Negative, 980).Runs(Outcome.Positive, 20).Runs(Outcome.Invalid, 30), OneDevice).Program;

        var expected = RoganGladen.Estimate(20, 1000, AccuracyStatement.FromCounts(160, 200), AccuracyStatement.FromCounts(995, 1000));
        var estimate = program.Estimates.Single(value => value.Method == "rogan-gladen");
        estimate.Estimate.Should().Be(expected.Value);
        estimate.Lower.Should().Be(expected.Lower);
        estimate.Upper.Should().Be(expected.Upper);
        estimate.Unclipped.Should().Be(expected.Unclipped);
        var lang = LangReiczigel.Estimate(20, 1000, AccuracyStatement.FromCounts(160, 200), AccuracyStatement.FromCounts(995, 1000));
        program.Lead.Method.Should().Be("lang-reiczigel");
        (program.Lead.Estimate, program.Lead.Lower, program.Lead.Upper).Should().Be((lang.Value, lang.Lower, lang.Upper));
        program.Apparent.Estimate.Should().Be(0.02);
        var posterior = BayesianPrevalence.EstimatePrevalence(20, 1000, AccuracyStatement.FromCounts(160, 200), AccuracyStatement.FromCounts(995, 1000)).ToEstimate();
        var bayes = program.Estimates.Single(value => value.Method == "bayes");
        (bayes.Estimate, bayes.Lower, bayes.Upper).Should().Be((posterior.Value, posterior.Lower, posterior.Upper));
    }

    [Theory]
    [InlineData(18, 2, true)]
    [InlineData(5, 15, false)]
    public void A_prevalence_below_the_share_confirmed_says_that_the_stated_specificity_is_too_low(int confirmed, int refuted, bool below)
    {
        // Rogan and Gladen: (0.02 - 0.015) / 0.785 = 0.00637 of 1,000 tests, of which 0.018 or 0.005 were confirmed.
        var settings = OneDevice with { Screens = [new ScreenSettings { Name = "one", Sensitivity = Counts(160, 200), Specificity = Counts(985, 1000) }] };
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 980).Runs(Outcome.Positive, confirmed, FollowUp.Confirmed).Runs(Outcome.Positive, refuted, FollowUp.Refuted), settings);

        findings.Program.Lead.Estimate.Should().BeApproximately(0.005 / 0.785, 1e-12);
        (findings.Program.Confirmed, findings.Program.BelowConfirmed).Should().Be((confirmed, below));
        findings.Program.Remark.Contains("the stated specificity is too low for these data", StringComparison.Ordinal).Should().Be(below);
        findings.Sentences.Any(sentence => sentence.Text.Contains("of valid tests were positive and confirmed, which is more", StringComparison.Ordinal)).Should().Be(below);
    }

    [Fact]
    public void Each_period_is_corrected_on_its_own_and_below_the_false_positives_it_is_zero_with_the_remark()
    {
        var findings = Of(
            new ProgramSketch().Runs(Outcome.Negative, 970).Runs(Outcome.Positive, 30).Runs(Outcome.Negative, 999, day: 7).Runs(Outcome.Positive, 1, day: 7), OneDevice);

        findings.Periods.Select(period => period.PeriodStart).Should().Equal(ProgramSketch.FirstDay, ProgramSketch.FirstDay.AddDays(7));
        findings.Periods[0].Lead.Estimate.Should().BeApproximately((0.03 - 0.005) / 0.795, 1e-12);
        var second = findings.Periods[1];
        second.Lead.Estimate.Should().Be(0);
        second.BelowFalsePositiveRate.Should().BeTrue();
        second.Remark.Should().Contain("the estimate is 0").And.Contain("not compatible with these data");
        findings.PeriodsAtZero.Should().Be(1);
        findings.Sentences.Select(sentence => sentence.Text).Should().Contain(text => text.StartsWith("In 1 of 2 weeks", StringComparison.Ordinal));
    }

    [Fact]
    public void Several_devices_are_corrected_once_with_accuracies_weighted_by_their_tests_in_the_period()
    {
        var findings = Of(
            new ProgramSketch().Runs(Outcome.Negative, 290).Runs(Outcome.Positive, 10).Runs(Outcome.Negative, 95, lot: "B1").Runs(Outcome.Positive, 5, lot: "B1")
                .Runs(Outcome.Negative, 100, lot: "B1", day: 7),
            TwoDevices);

        var week = findings.Periods[0];
        week.Sensitivity.Should().BeApproximately((0.75 * 0.8) + (0.25 * 0.6), 1e-12);
        week.Specificity.Should().BeApproximately((0.75 * 0.995) + (0.25 * 0.96), 1e-12);
        week.Lead.Estimate.Should().BeApproximately(((15 / 400.0) + week.Specificity!.Value - 1) / (week.Sensitivity!.Value + week.Specificity.Value - 1), 1e-12);
        week.Devices.Should().Equal("a", "b");
        findings.Periods[1].Sensitivity.Should().Be(0.6);
        findings.Devices.Select(device => device.Key).Should().Equal("a", "b");
    }

    [Fact]
    public void Tests_of_devices_without_stated_accuracy_are_left_out_and_said_so()
    {
        var settings = TwoDevices with { Screens = [TwoDevices.Screens[0], TwoDevices.Screens[1] with { Specificity = null }] };
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 290).Runs(Outcome.Positive, 10).Runs(Outcome.Positive, 50, lot: "B1").Runs(Outcome.Negative, 7, lot: "C"), settings);

        findings.Program.Apparent.Trials.Should().Be(300);
        findings.Program.TestsWithoutAccuracy.Should().Be(57);
        findings.Program.Remark.Should().Contain("left out");
        findings.Devices.Single(device => device.Key == "b").Lead.Estimate.Should().BeNull();
    }

    [Fact]
    public void Without_any_stated_accuracy_it_is_undefined_and_says_why()
    {
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 290).Runs(Outcome.Positive, 10), new ProgramSettings());

        findings.Program.Lead.Estimate.Should().BeNull();
        findings.Sentences.Should().ContainSingle().Which.Text.Should().Contain("undefined").And.Contain("does not state");
    }

    [Fact]
    public void Clusters_widen_the_limits()
    {
        var sketch = new ProgramSketch();
        foreach (var site in new[] { "a", "b", "c", "d", "e", "f" }) sketch.Runs(Outcome.Negative, 900, site: site).Runs(Outcome.Positive, site == "a" ? 100 : 10, site: site);
        var estimate = Of(sketch, OneDevice).Program.Lead;

        (estimate.WidenedUpper - estimate.WidenedLower).Should().BeGreaterThan(1.5 * (estimate.Upper!.Value - estimate.Lower!.Value));
    }

    [Fact]
    public void The_table_begins_with_the_columns_that_were_agreed_and_has_a_row_for_each_part_and_method()
    {
        var findings = Of(ExamplePrograms.FaultyLotAndClumsySite(), ExamplePrograms.Full);

        findings.Table.Columns.Select(column => column.Name).Take(12).Should().Equal(
            "by", "level", "period_start", "tests", "positives", "apparent", "method", "estimate", "lower", "upper", "confidence", "remark");
        findings.Table.Count.Should().Be((2 * (1 + findings.Periods.Length + findings.Sites.Length + findings.Devices.Length)) + 1);
        findings.Program.Estimates.Select(estimate => estimate.Method).Should().Equal("lang-reiczigel", "rogan-gladen", "bayes");
        findings.Periods.Sum(period => period.Apparent.Trials).Should().Be(findings.Program.Apparent.Trials);
        findings.Sites.Sum(site => site.Apparent.Events).Should().Be(findings.Program.Apparent.Events);
    }

    private static TruePrevalenceFindings Of(ProgramSketch sketch, ProgramSettings settings) => Evaluator.Evaluate(sketch.Tally(), settings).TruePrevalence;

    private static StatedAccuracy Counts(long successes, long trials) => new((double)successes / trials, successes, trials, null, null);
}
