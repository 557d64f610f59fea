using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests;

/// <summary>The figures of Gans and others 2022 from a tally written by hand (see <see cref="PublishedProgram"/>).</summary>
public class PublishedProgramTests
{
    private static Findings Findings => ExamplePrograms.Evaluated("published");

    [Fact]
    public void Positivity_is_1463_in_a_million()
    {
        (Findings.Positivity.Program.Events, Findings.Positivity.Program.Trials).Should().Be((1_322, 903_408));
        Findings.Positivity.Program.Estimate.Should().BeApproximately(0.0014633477, 5e-11);
    }

    [Fact]
    public void Follow_through_is_83_43_per_cent()
    {
        (Findings.FollowUp.Positive.Due, Findings.FollowUp.Positive.Conclusive, Findings.FollowUp.Positive.Unverified).Should().Be((1_322, 1_103, 219));
        Findings.FollowUp.Positive.FollowThrough.Estimate.Should().BeApproximately(0.8343419062, 5e-11);
    }

    [Fact]
    public void A_positive_was_worth_58_11_per_cent_with_Wilson_limits_inside_the_wider_ones_that_lead()
    {
        var observed = Findings.PredictiveValue.Observed;

        observed.Estimate.Should().BeApproximately(0.5811423391, 5e-11);
        // Wilson's limits of 462/1103, computed independently (scipy, R), mirrored.
        observed.Lower.Should().BeApproximately(1 - 0.4482062806, 5e-11);
        observed.Upper.Should().BeApproximately(1 - 0.3900722745, 5e-11);
        observed.DesignEffect.Should().BeGreaterThan(1);
        observed.WidenedLower.Should().BeLessThan(observed.Lower!.Value);
        observed.WidenedUpper.Should().BeGreaterThan(observed.Upper!.Value);
        Findings.Answers.Questions[0].Text.Should().StartWith("Of 1,103 positive runs that were confirmed or refuted, 641 were confirmed: 58.1 % (95 % interval ");
    }

    [Fact]
    public void Its_bounds_are_48_49_and_65_05_per_cent()
    {
        Findings.PredictiveValue.Bounds.Lower.Should().BeApproximately(0.4848714070, 5e-11);
        Findings.PredictiveValue.Bounds.Upper.Should().BeApproximately(0.6505295008, 5e-11);
    }

    [Fact]
    public void Of_a_thousand_valid_tests_0_5114_were_refuted()
    {
        Findings.Refuted.Program.PerThousand.Should().BeApproximately(0.5113968, 5e-8);
        Findings.Refuted.Groups.Where(group => group.Grouping == Grouping.Site).Sum(group => group.RefutedRuns).Should().Be(462);
    }

    [Fact]
    public void The_one_faulty_lot_is_flagged_alone_and_without_it_a_positive_was_worth_more()
    {
        Findings.Lots.Where(lot => lot.Flag != Flag.None).Select(lot => lot.Lot).Should().Equal(PublishedProgram.FaultyLot);
        Findings.PredictiveValue.FlaggedLots.Should().Equal(PublishedProgram.FaultyLot);
        Findings.PredictiveValue.WithoutFlaggedLots.Estimate.Should().BeGreaterThan(0.75);
        Findings.PredictiveValue.Table.Rows.Should().Contain(row => row.Basis == PredictiveValueBasis.ObservedWithoutFlaggedLots && row.By == "program");
        Findings.Answers.NextSteps[0].Text.Should().Contain(PublishedProgram.FaultyLot);
        Findings.Answers.Questions[1].Text.Should().Contain(PublishedProgram.FaultyLot);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void However_the_invented_part_falls_the_figures_stay_and_the_faulty_lot_alone_is_flagged(int seed)
    {
        var findings = Evaluator.Evaluate(PublishedProgram.Sketch(seed).Tally(), new ProgramSettings());

        findings.PredictiveValue.Observed.Estimate.Should().BeApproximately(0.5811423391, 5e-11);
        findings.Lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).Select(lot => lot.Lot).Should().Equal(PublishedProgram.FaultyLot);
    }

    [Fact]
    public void Without_audits_nothing_is_said_of_those_who_tested_negative()
    {
        Findings.Accuracy.Sensitivity.Estimate.Should().BeNull();
        Findings.Audits.Program.Missed.Should().Be(0);
    }
}
