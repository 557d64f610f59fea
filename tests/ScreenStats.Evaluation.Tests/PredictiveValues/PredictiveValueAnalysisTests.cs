using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.PredictiveValues;

public class PredictiveValueAnalysisTests
{
    private static readonly ProgramSettings Settings = new();

    [Fact]
    public void Observed_value_is_confirmed_of_confirmed_and_refuted_with_Wilson_limits_and_bounds()
    {
        // Wilson's limits of 15/148: Newcombe RG, Stat Med 1998;17:857-872, Table I, method 3 (.0624, .1605).
        var findings = Of(new ProgramSketch()
            .Runs(Outcome.Positive, 15, FollowUp.Confirmed).Runs(Outcome.Positive, 133, FollowUp.Refuted)
            .Runs(Outcome.Positive, 1, FollowUp.Unresolved).Runs(Outcome.Positive, 2, FollowUp.Pending).Runs(Outcome.Positive, 49, FollowUp.Unverified));

        findings.Observed.Lower.Should().BeApproximately(0.0623863995, 5e-11);
        findings.Observed.Upper.Should().BeApproximately(0.1604872417, 5e-11);
        findings.Bounds.WithoutConclusion.Should().Be(52);
        findings.Bounds.Lower.Should().Be(15 / 200.0);
        findings.Bounds.Upper.Should().Be(67 / 200.0);
    }

    [Fact]
    public void Inconclusive_runs_never_enter_the_observed_value()
    {
        var findings = Of(new ProgramSketch()
            .Runs(Outcome.Positive, 3, FollowUp.Confirmed).Runs(Outcome.Positive, 1, FollowUp.Refuted)
            .Runs(Outcome.Inconclusive, 1, FollowUp.Confirmed).Runs(Outcome.Inconclusive, 7, FollowUp.Refuted));

        findings.Observed.Estimate.Should().Be(0.75);
        findings.Inconclusive.Estimate.Should().Be(0.125);
    }

    [Fact]
    public void Without_flagged_lots_their_runs_leave_counts_and_bounds()
    {
        var sketch = new ProgramSketch()
            .Runs(Outcome.Positive, 8, FollowUp.Confirmed, lot: "A1").Runs(Outcome.Positive, 2, FollowUp.Refuted, lot: "A1")
            .Runs(Outcome.Positive, 90, FollowUp.Refuted, lot: "B2").Runs(Outcome.Positive, 10, FollowUp.Unverified, lot: "B2");

        var findings = Of(sketch, "B2");

        findings.Observed.Estimate.Should().Be(0.08);
        findings.FlaggedLots.Should().Equal("B2");
        findings.WithoutFlaggedLots.Estimate.Should().Be(0.8);
        findings.WithoutFlaggedLotsBounds.WithoutConclusion.Should().Be(0);
        findings.Table.Rows.Where(row => row.Basis == PredictiveValueBasis.ObservedWithoutFlaggedLots && row.By == "program")
            .Should().ContainSingle().Which.Estimate.Should().Be(0.8);
        findings.Sentences.Should().Contain(sentence => sentence.Text.StartsWith("Without the runs of the flagged lot B2 it would be 80.0 % (8 of 10; ", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_nothing_is_verified_the_value_is_undefined_with_a_reason_and_the_bounds_are_nought_and_one()
    {
        var findings = Of(new ProgramSketch().Runs(Outcome.Positive, 4, FollowUp.Unverified).WithoutConfirmatory());

        findings.Observed.Estimate.Should().BeNull();
        findings.Observed.EstimateUndefined.Should().Be("no positive run was confirmed or refuted");
        (findings.Bounds.Lower, findings.Bounds.Upper).Should().Be((0.0, 1.0));
        findings.Corrected.Estimate.Should().BeNull();
    }

    [Fact]
    public void A_perfect_confirmatory_test_leaves_the_value_as_observed_and_an_imperfect_one_corrects_it()
    {
        var sketch = new ProgramSketch().Runs(Outcome.Positive, 60, FollowUp.Confirmed).Runs(Outcome.Positive, 40, FollowUp.Refuted);

        Of(sketch, Confirmatory(1, 1)).Corrected.Estimate.Should().BeApproximately(0.6, 1e-12);
        // Rogan WJ, Gladen B, Am J Epidemiol 1978;107:71-76: (t + Sp - 1) / (Se + Sp - 1).
        Of(sketch, Confirmatory(0.9, 0.95)).Corrected.Estimate.Should().BeApproximately((0.6 + 0.95 - 1) / (0.9 + 0.95 - 1), 1e-12);
        Of(sketch).Corrected.EstimateUndefined.Should().Be("the program file does not state both sensitivity and specificity of the confirmatory test");
    }

    [Fact]
    public void The_corrected_value_is_widened_by_Students_quantile_where_few_sites_differ()
    {
        // R 4.2.2: v <- 5 / (4 * 2000^2) * (30^2 + 15^2 + 0 + 15^2 + 30^2); .5 + c(-1, 1) * qt(.975, 4) * sqrt(v). A perfect test corrects nothing.
        var sketch = new ProgramSketch()
            .Runs(Outcome.Positive, 230, FollowUp.Confirmed).Runs(Outcome.Positive, 170, FollowUp.Refuted)
            .Runs(Outcome.Positive, 215, FollowUp.Confirmed, "East").Runs(Outcome.Positive, 185, FollowUp.Refuted, "East")
            .Runs(Outcome.Positive, 200, FollowUp.Confirmed, "South").Runs(Outcome.Positive, 200, FollowUp.Refuted, "South")
            .Runs(Outcome.Positive, 185, FollowUp.Confirmed, "Far").Runs(Outcome.Positive, 215, FollowUp.Refuted, "Far")
            .Runs(Outcome.Positive, 170, FollowUp.Confirmed, "West").Runs(Outcome.Positive, 230, FollowUp.Refuted, "West");

        var corrected = Of(sketch, Confirmatory(1, 1)).Corrected;

        corrected.Lower.Should().BeApproximately(0.426378381444592, 1e-9);
        corrected.Upper.Should().BeApproximately(0.573621618555408, 1e-9);
    }

    [Fact]
    public void The_value_lies_inside_its_bounds_and_both_limits_and_the_widened_ones_are_no_narrower() =>
        Gen.Select(Gen.Int[0, 2], Gen.Int[0, 4], Gen.Int[1, 30]).List[1, 30].Sample(runs =>
        {
            var sketch = new ProgramSketch();
            foreach (var (site, followUp, count) in runs) sketch.Runs(Outcome.Positive, count, (FollowUp)(followUp + 1), $"S{site}", day: site * 9);

            var findings = Of(sketch);

            if (findings.Observed.Estimate is not { } value) return;
            value.Should().BeInRange(findings.Bounds.Lower!.Value - 1e-12, findings.Bounds.Upper!.Value + 1e-12);
            findings.Observed.WidenedLower.Should().BeLessThanOrEqualTo(findings.Observed.Lower!.Value + 1e-12);
            findings.Observed.WidenedUpper.Should().BeGreaterThanOrEqualTo(findings.Observed.Upper!.Value - 1e-12);
        });

    [Fact]
    public void The_table_begins_with_the_columns_of_its_contract() =>
        string.Join(',', Of(new ProgramSketch()).Table.Columns.Select(column => column.Name)).Should().StartWith(
            "by,level,basis,measure,estimate,lower,upper,method,confidence,prevalence,prevalence_source,widened_lower,widened_upper,design_effect");

    private static ConfirmatoryTestSettings Confirmatory(double sensitivity, double specificity) => new()
    {
        Sensitivity = new StatedAccuracy(sensitivity, null, null, null, null),
        Specificity = new StatedAccuracy(specificity, null, null, null, null),
    };

    private static PredictiveValueFindings Of(ProgramSketch sketch, params string[] flagged) => Of(sketch, Settings, flagged);

    private static PredictiveValueFindings Of(ProgramSketch sketch, ConfirmatoryTestSettings confirmatory) =>
        Of(sketch, Settings with { ConfirmatoryTest = confirmatory }, []);

    private static PredictiveValueFindings Of(ProgramSketch sketch, ProgramSettings settings, string[] flagged)
    {
        var tally = sketch.Tally();
        var people = new PersonSums(tally);
        return PredictiveValueAnalysis.Of(tally, people, settings, flagged, ExpectedAnalysis.Of(tally, people, settings));
    }
}
