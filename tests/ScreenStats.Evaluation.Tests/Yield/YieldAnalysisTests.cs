using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Evaluation.Tests.Yield;

public class YieldAnalysisTests
{
    [Fact]
    public void Runs_for_each_case_are_the_reciprocal_of_the_share_with_reciprocal_limits()
    {
        // Wilson's limits of 81/263: Newcombe RG, Stat Med 1998;17:857-872, Table I, method 3 (.2553, .3662).
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 182).Runs(Outcome.Positive, 81, FollowUp.Confirmed));

        findings.RunsPerCase.Estimate.Should().BeApproximately(263 / 81.0, 1e-12);
        findings.RunsPerCase.Lower.Should().BeApproximately(1 / 0.3662095770, 1e-9);
        findings.RunsPerCase.Upper.Should().BeApproximately(1 / 0.2552885199, 1e-9);
        findings.PersonsPerCase.Estimate.Should().BeApproximately(263 / 81.0, 1e-12);
    }

    [Fact]
    public void Cases_found_through_inconclusive_runs_are_counted_on_a_line_of_their_own()
    {
        var findings = Of(new ProgramSketch()
            .Runs(Outcome.Negative, 90).Runs(Outcome.Positive, 6, FollowUp.Confirmed).Runs(Outcome.Inconclusive, 4, FollowUp.Confirmed));

        (findings.Cases, findings.CasesThroughPositive, findings.CasesThroughInconclusive).Should().Be((10, 6, 4));
        findings.RunsPerCase.Estimate.Should().Be(10);
        findings.TestsPerConfirmedRun.Estimate.Should().Be(16);
    }

    [Fact]
    public void Where_no_case_was_found_there_is_no_figure_but_a_lower_limit()
    {
        // Wilson's upper limit of 0/20 is 0.1611 (Newcombe 1998, Table I, method 3).
        var findings = Of(new ProgramSketch().Runs(Outcome.Negative, 20));

        findings.RunsPerCase.Estimate.Should().BeNull();
        findings.RunsPerCase.EstimateUndefined.Should().Be("no case was found");
        findings.RunsPerCase.Lower.Should().BeApproximately(1 / 0.1611251581, 1e-8);
        findings.RunsPerCase.Upper.Should().BeNull();
        findings.Sentences[0].Text.Should().Be("20 runs found no case; with 95 % confidence one case takes at least 6.21 runs.");
    }

    private static YieldFindings Of(ProgramSketch sketch)
    {
        var tally = sketch.Tally();
        return YieldAnalysis.Of(tally, new PersonSums(tally), new ProgramSettings());
    }
}
