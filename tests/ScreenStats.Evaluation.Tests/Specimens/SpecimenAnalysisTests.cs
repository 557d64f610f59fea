using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Specimens;

public class SpecimenAnalysisTests
{
    [Fact]
    public void Each_reason_has_its_results_and_the_share_of_positives()
    {
        var findings = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), ExamplePrograms.Full).Specimens;

        findings.Reasons.Select(reason => reason.Reason).Should().Equal("follow-up", "audit", "(none)");
        var followUp = findings.Reasons[0];
        (followUp.Specimens, followUp.Persons, followUp.Indeterminate, followUp.Rejected).Should().Be((120, 105, 5, 0));
        (followUp.Positive.Events, followUp.Positive.Trials, followUp.Negative).Should().Be((50, 115, 65));
        (findings.All.Specimens, findings.All.Rejected).Should().Be((251, 2));
        findings.Reasons[2].Positive.EstimateUndefined.Should().Be("there is no specimen with a conclusive result");
    }

    [Fact]
    public void People_with_several_specimens_of_a_reason_widen_the_limits()
    {
        var share = Evaluator.Evaluate(
            new ProgramSketch().Specimens(SpecimenReason.FollowUp, 4, 0, 0, 0, 30).Specimens(SpecimenReason.FollowUp, 0, 4, 0, 0, 30).Tally(), new ProgramSettings()).Specimens.Reasons[0].Positive;

        share.DesignEffect.Should().BeGreaterThan(3);
        share.WidenedLower.Should().BeLessThan(share.Lower!.Value);
    }

    [Fact]
    public void No_specimens_are_said_to_be_none() =>
        Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 5).WithoutConfirmatory().Tally(), new ProgramSettings()).Specimens.Sentences
            .Should().ContainSingle().Which.Text.Should().Contain("no confirmatory export");
}
