using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Refuted;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Refuted;

public class RefutedAnalysisTests
{
    [Fact]
    public void Refuted_positives_are_counted_per_thousand_valid_tests_of_each_site_and_lot()
    {
        var findings = Of(new ProgramSketch()
            .Runs(Outcome.Negative, 996, lot: "A1").Runs(Outcome.Positive, 4, FollowUp.Refuted, lot: "A1").Runs(Outcome.Invalid, 50, lot: "A1")
            .Runs(Outcome.Negative, 1_000, site: "South", lot: "B2").Runs(Outcome.Inconclusive, 3, FollowUp.Refuted, "South", "B2"));

        findings.Program.ValidTests.Should().Be(2_000);
        findings.Program.PerThousand.Should().Be(2);
        findings.Groups.Select(group => (group.Level, group.PerThousand)).Should().Equal(("North", 4), ("South", 0), ("A1", 4), ("B2", 0));
    }

    [Fact]
    public void Without_valid_tests_the_rate_is_undefined_with_a_reason()
    {
        var finding = Of(new ProgramSketch().Runs(Outcome.Invalid, 3)).Program;

        finding.PerThousand.Should().BeNull();
        finding.PerThousandUndefined.Should().Be("there are no valid tests");
    }

    private static RefutedFindings Of(ProgramSketch sketch)
    {
        var tally = sketch.Tally();
        return RefutedAnalysis.Of(tally, new PersonSums(tally), new ProgramSettings());
    }
}
