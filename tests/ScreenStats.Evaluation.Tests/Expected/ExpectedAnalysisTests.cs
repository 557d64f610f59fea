using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Expected;

public class ExpectedAnalysisTests
{
    /// <summary>
    /// FDA letter to clinical laboratory staff, 3 November 2020 (read quoted): at a specificity of 98 % a positive is true in about
    /// 80 %, 30 % and 4 % at a prevalence of 10 %, 1 % and 0.1 %. The letter's sensitivity was not seen; 80 % is taken here.
    /// </summary>
    [Theory]
    [InlineData(0.1, 0.8163265306, "0.8")]
    [InlineData(0.01, 0.2877697842, "0.3")]
    [InlineData(0.001, 0.0384985563, "0.04")]
    public void A_specificity_of_98_in_100_gives_the_published_predictive_values(double prevalence, double expected, string published)
    {
        var device = Device(new ProgramSketch().Runs(Outcome.Negative, 1), Exact(0.8), Exact(0.98), new PrevalenceSettings(prevalence, null, null, "letter"));

        device.ExpectedPositivePredictiveValue.Estimate.Should().BeApproximately(expected, 5e-11);
        device.ExpectedPositivePredictiveValue.Estimate!.Value.ToString("G1", System.Globalization.CultureInfo.InvariantCulture).Should().Be(published);
    }

    /// <summary>Mercaldo ND, Lau KF, Zhou XH, Stat Med 2007;26:2170-2183 (counts from memory; limits computed from the formula).</summary>
    [Fact]
    public void Expected_values_have_logit_limits_at_exactly_the_prevalence_and_wider_ones_with_its_own_uncertainty()
    {
        var device = Device(
            new ProgramSketch().Runs(Outcome.Negative, 1), Counts(240, 418), Counts(288, 375), new PrevalenceSettings(0.03, 0.02, 0.045, "survey"));

        device.ExpectedPositivePredictiveValue.Estimate.Should().BeApproximately(0.0710993701, 5e-11);
        device.ExpectedPositivePredictiveValue.Lower.Should().BeApproximately(0.0588709729, 5e-11);
        device.ExpectedPositivePredictiveValue.Upper.Should().BeApproximately(0.0856366657, 5e-11);
        device.ExpectedNegativePredictiveValue.Lower.Should().BeApproximately(0.9809487910, 5e-11);
        device.ExpectedNegativePredictiveValue.Upper.Should().BeApproximately(0.9850837047, 5e-11);
        device.ExpectedPositivePredictiveValueWithPrevalence.Lower.Should().BeLessThan(0.0588);
        device.ExpectedPositivePredictiveValueWithPrevalence.Upper.Should().BeGreaterThan(0.0857);
    }

    /// <summary>Gelman A, Carpenter B, JRSS C 2020;69:1269-1283 (data seen): 50/3330, 103/122, 399/401; estimate computed from the formula.</summary>
    [Fact]
    public void Corrected_prevalence_is_that_of_Rogan_and_Gladen_and_is_said_to_be_no_judge_of_the_device()
    {
        var findings = Findings(
            new ProgramSketch().Runs(Outcome.Negative, 3280).Runs(Outcome.Positive, 50, FollowUp.Unverified), Counts(103, 122), Counts(399, 401));

        findings.Devices[0].CorrectedPrevalence.Estimate.Should().BeApproximately(0.0119477962, 5e-11);
        findings.Sentences[^1].Text.Should().Contain("circular");
    }

    [Fact]
    public void Corrected_prevalence_is_widened_for_clusters_as_in_the_table_of_true_prevalence()
    {
        var settings = new ProgramSettings { TimeZone = "Etc/UTC", Screens = [new ScreenSettings { Name = "Kit", Sensitivity = Counts(103, 122), Specificity = Counts(399, 401) }] };
        var findings = Evaluator.Evaluate(
            new ProgramSketch().Runs(Outcome.Negative, 1000).Runs(Outcome.Positive, 50, FollowUp.Unverified).Runs(Outcome.Negative, 990, site: "South")
                .Runs(Outcome.Positive, 10, FollowUp.Unverified, "South").Runs(Outcome.Negative, 970, site: "West").Runs(Outcome.Positive, 30, FollowUp.Unverified, "West")
                .Runs(Outcome.Negative, 995, site: "Far").Runs(Outcome.Positive, 5, FollowUp.Unverified, "Far").Runs(Outcome.Negative, 950, site: "East").Runs(Outcome.Positive, 50, FollowUp.Unverified, "East").Tally(), settings);

        var corrected = findings.Expected.Devices[0].CorrectedPrevalence;
        var row = findings.TruePrevalence.Devices[0].Estimates.Single(estimate => estimate.Method == "rogan-gladen");
        row.WidenedUpper.Should().BeGreaterThan(row.Upper!.Value + 0.01);
        (corrected.Estimate, corrected.Lower, corrected.Upper).Should().Be((row.Estimate, row.WidenedLower, row.WidenedUpper));
    }

    [Fact]
    public void Many_more_refuted_positives_than_stated_are_not_compatible()
    {
        var device = Device(
            new ProgramSketch().Runs(Outcome.Negative, 9_900).Runs(Outcome.Positive, 100, FollowUp.Refuted), Exact(0.8), Counts(2391, 2400));

        device.StatedFalsePositiveRate.Should().BeApproximately(9 / 2400.0, 1e-12);
        device.RefutedRate.Estimate.Should().Be(0.01);
        device.Compatibility.Should().Be(Compatibility.NotCompatible);
        device.Explanation.Should().StartWith("more positives were refuted");
    }

    [Fact]
    public void As_many_refuted_positives_as_stated_are_compatible()
    {
        var device = Device(
            new ProgramSketch().Runs(Outcome.Negative, 9_960).Runs(Outcome.Positive, 40, FollowUp.Refuted), Exact(0.8), Counts(2391, 2400));

        device.Compatibility.Should().Be(Compatibility.Compatible);
    }

    [Fact]
    public void Where_the_missing_results_decide_nobody_can_tell()
    {
        var device = Device(
            new ProgramSketch().Runs(Outcome.Negative, 9_800).Runs(Outcome.Positive, 40, FollowUp.Refuted).Runs(Outcome.Positive, 160, FollowUp.Unverified),
            Exact(0.8), Counts(2391, 2400));

        device.Compatibility.Should().Be(Compatibility.CannotTell);
        device.RefutedRateBoundUpper.Should().Be(0.02);
    }

    [Fact]
    public void Positivity_below_one_minus_specificity_gives_a_corrected_prevalence_of_nought_with_the_remark()
    {
        var findings = Findings(
            new ProgramSketch().Runs(Outcome.Negative, 99_900).Runs(Outcome.Positive, 100, FollowUp.Refuted), Exact(0.8), Exact(0.98));

        findings.Devices[0].CorrectedPrevalence.Estimate.Should().Be(0);
        findings.Devices[0].PositivityBelowStatedRate.Should().BeTrue();
        findings.Devices[0].Compatibility.Should().Be(Compatibility.NotCompatible);
        findings.Sentences.Select(sentence => sentence.Text).Should().Contain(
            "Kit: fewer tests were positive than the stated specificity alone would give, so the corrected prevalence is 0 and the stated specificity is not compatible with these data.");
        findings.Devices[0].Places.Should().BeEmpty();
    }

    [Fact]
    public void Lots_go_to_the_device_whose_pattern_they_match()
    {
        var settings = new ProgramSettings
        {
            Screens = [new ScreenSettings { Name = "One", Lots = ["A*"] }, new ScreenSettings { Name = "Two", Lots = ["B?"] }, new ScreenSettings { Name = "Rest" }],
        };
        var tally = new ProgramSketch()
            .Runs(Outcome.Negative, 10, lot: "A-1").Runs(Outcome.Negative, 20, lot: "B2").Runs(Outcome.Negative, 30, lot: "B22").Runs(Outcome.Negative, 40, lot: Levels.None).Tally();

        var devices = ExpectedAnalysis.Of(tally, new PersonSums(tally), settings).Devices;

        devices.Select(device => (device.Device, device.ValidTests)).Should().Equal(("One", 10), ("Two", 20), ("Rest", 70));
        devices[2].Lots.Should().Equal(Levels.None, "B22");
    }

    [Fact]
    public void What_is_not_stated_is_undefined_with_a_reason()
    {
        var device = Device(new ProgramSketch().Runs(Outcome.Negative, 10), null, Exact(0.99));

        device.ExpectedPositivePredictiveValue.EstimateUndefined.Should().Be("the program file does not state both sensitivity and specificity of this device");
        device.CorrectedPrevalence.Estimate.Should().BeNull();
        device.Curve.Should().BeEmpty();
        Device(new ProgramSketch().Runs(Outcome.Negative, 10), Exact(0.9), Exact(0.99)).ExpectedPositivePredictiveValue.EstimateUndefined
            .Should().Be("the program file states no external prevalence");
        Device(new ProgramSketch().Runs(Outcome.Negative, 10), Exact(0.9), null).Compatibility.Should().Be(Compatibility.NotJudged);
    }

    [Fact]
    public void The_curve_runs_from_1_in_10000_to_one_half_rises_for_positives_and_falls_for_negatives()
    {
        var curve = Device(new ProgramSketch().Runs(Outcome.Negative, 10), Counts(61, 97), Counts(2391, 2400)).Curve;

        curve[0].Prevalence.Should().Be(0.0001);
        curve[^1].Prevalence.Should().Be(0.5);
        curve.Select(point => point.Positive).Should().BeInAscendingOrder();
        curve.Select(point => point.Negative).Should().BeInDescendingOrder();
        curve.Should().OnlyContain(point => point.PositiveLower <= point.Positive && point.Positive <= point.PositiveUpper);
    }

    [Fact]
    public void The_program_stands_on_the_curve_at_the_external_prevalence_and_at_the_one_behind_its_positivity()
    {
        var device = Device(
            new ProgramSketch().Runs(Outcome.Negative, 3280).Runs(Outcome.Positive, 50, FollowUp.Unverified), Counts(103, 122), Counts(399, 401),
            new PrevalenceSettings(0.004, null, null, "survey"));

        device.Places.Select(place => place.Id).Should().Equal("external", "positivity");
        device.Places[0].Source.Should().Be("survey");
        device.Places[1].Prevalence.Should().Be(device.CorrectedPrevalence.Estimate);
    }

    private static StatedAccuracy Exact(double value) => new(value, null, null, null, null);

    private static StatedAccuracy Counts(long successes, long trials) => new((double)successes / trials, successes, trials, null, null);

    private static DeviceFinding Device(ProgramSketch sketch, StatedAccuracy? sensitivity, StatedAccuracy? specificity, PrevalenceSettings? prevalence = null) =>
        Findings(sketch, sensitivity, specificity, prevalence).Devices.Single();

    private static ExpectedFindings Findings(
        ProgramSketch sketch, StatedAccuracy? sensitivity, StatedAccuracy? specificity, PrevalenceSettings? prevalence = null)
    {
        var tally = sketch.Tally();
        return ExpectedAnalysis.Of(tally, new PersonSums(tally), new ProgramSettings
        {
            Screens = [new ScreenSettings { Name = "Kit", Sensitivity = sensitivity, Specificity = specificity }],
            Prevalence = prevalence,
        });
    }
}
