using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Audits;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Audits;

public class AuditAnalysisTests
{
    private static readonly ProgramSettings Settings = new();

    [Fact]
    public void Without_audits_the_negative_predictive_value_is_undefined_with_a_reason()
    {
        var findings = AuditAnalysis.Of(new ProgramSketch()
            .Runs(Outcome.Negative, 5_000).Runs(Outcome.Positive, 30, FollowUp.Confirmed).Runs(Outcome.Positive, 10, FollowUp.Refuted)
            .IntervalCases(3, 25).Tally(), Settings);

        findings.Program.NegativePredictiveValue.Estimate.Should().BeNull();
        findings.Program.NegativePredictiveValue.EstimateUndefined.Should().Be("no negative run was verified by an audit with a conclusive result");
        findings.Program.Missed.Should().Be(0);
    }

    [Fact]
    public void Negative_predictive_value_is_the_share_that_agreed_of_those_with_a_conclusion()
    {
        var findings = AuditAnalysis.Of(new ProgramSketch()
            .Runs(Outcome.Positive, 1, FollowUp.Confirmed)
            .Runs(Outcome.Negative, 2, FollowUp.Missed).Runs(Outcome.Negative, 198, FollowUp.Agreed, "South").Runs(Outcome.Negative, 5, FollowUp.Unresolved)
            .Tally(), Settings);

        findings.Program.Audited.Should().Be(205);
        findings.Program.NegativePredictiveValue.Estimate.Should().Be(0.99);
        findings.Program.NegativePredictiveValue.FewCounts.Should().BeTrue();
        findings.Sentences[1].Text.Should().Contain("[few counts]");
    }

    [Fact]
    public void Missed_agreed_and_unresolved_of_sites_and_lots_add_up_to_the_program() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 2], Gen.Int[0, 30]).List[0, 40].Sample(runs =>
        {
            var sketch = new ProgramSketch();
            foreach (var (site, lot, result, count) in runs)
            {
                sketch.Runs(Outcome.Negative, count, result switch { 0 => FollowUp.Missed, 1 => FollowUp.Agreed, _ => FollowUp.Unresolved }, $"S{site}", $"L{lot}");
            }

            var findings = AuditAnalysis.Of(sketch.Tally(), Settings);

            foreach (var grouping in new[] { Grouping.Site, Grouping.Lot })
            {
                var parts = findings.Groups.Where(part => part.Grouping == grouping).ToList();
                (parts.Sum(part => part.Missed), parts.Sum(part => part.Agreed), parts.Sum(part => part.Unresolved)).Should()
                    .Be((findings.Program.Missed, findings.Program.Agreed, findings.Program.Unresolved));
            }
        });

    [Fact]
    public void The_table_begins_with_the_columns_of_its_contract() =>
        string.Join(',', AuditAnalysis.Of(new ProgramSketch().Tally(), Settings).Table.Columns.Select(column => column.Name))
            .Should().StartWith("by,level,audited,missed,agreed,unresolved");
}
