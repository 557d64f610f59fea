using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.FollowThrough;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.FollowThrough;

public class FollowUpAnalysisTests
{
    private static readonly ProgramSettings Settings = new();

    [Fact]
    public void The_five_fates_add_up_to_those_due_and_follow_through_is_the_conclusive_share()
    {
        var finding = FollowUpAnalysis.Of(new ProgramSketch()
            .Runs(Outcome.Negative, 900)
            .Runs(Outcome.Positive, 6, FollowUp.Confirmed)
            .Runs(Outcome.Positive, 3, FollowUp.Refuted, "South")
            .Runs(Outcome.Positive, 1, FollowUp.Unresolved)
            .Runs(Outcome.Positive, 2, FollowUp.Pending)
            .Runs(Outcome.Positive, 8, FollowUp.Unverified)
            .Tally(), Settings).Positive;

        (finding.Confirmed, finding.Refuted, finding.Unresolved, finding.Pending, finding.Unverified).Should().Be((6, 3, 1, 2, 8));
        finding.Due.Should().Be(20);
        finding.Conclusive.Should().Be(9);
        finding.FollowThrough.Estimate.Should().Be(0.45);
        finding.UnverifiedShare.Should().Be(0.4);
    }

    [Fact]
    public void Inconclusive_runs_are_followed_up_apart_from_positive_ones()
    {
        var findings = FollowUpAnalysis.Of(new ProgramSketch()
            .Runs(Outcome.Positive, 6, FollowUp.Confirmed)
            .Runs(Outcome.Inconclusive, 2, FollowUp.Confirmed)
            .Runs(Outcome.Inconclusive, 3, FollowUp.Refuted)
            .Tally(), Settings);

        findings.Positive.Due.Should().Be(6);
        findings.Inconclusive.Due.Should().Be(5);
        findings.Inconclusive.Confirmed.Should().Be(2);
    }

    [Fact]
    public void Runs_the_policy_does_not_follow_up_are_not_due()
    {
        var settings = Settings with { Policy = new PolicySettings { FollowUp = [Outcome.Positive] } };

        var findings = FollowUpAnalysis.Of(new ProgramSketch()
            .Runs(Outcome.Positive, 1, FollowUp.Confirmed).Runs(Outcome.Inconclusive, 4).Tally(), settings);

        findings.Inconclusive.Due.Should().Be(0);
        findings.Inconclusive.FollowThrough.Estimate.Should().BeNull();
        findings.Inconclusive.FollowThrough.EstimateUndefined.Should().Be("no run was due for a confirmatory test");
        findings.Sentences.Select(sentence => sentence.Text).Should().Contain("The program's policy does not follow up inconclusive runs.");
    }

    [Fact]
    public void The_parts_of_the_program_add_up_to_the_whole_for_arbitrary_counts() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 3], Gen.Enum<FollowUp>(), Gen.Int[0, 40]).List[0, 60].Sample(runs =>
        {
            var sketch = new ProgramSketch();
            foreach (var (site, lot, person, followUp, count) in runs)
            {
                if (followUp is FollowUp.Missed or FollowUp.Agreed) continue;
                sketch.Runs(count % 2 == 0 ? Outcome.Positive : Outcome.Inconclusive, count, followUp, $"S{site}", $"L{lot}", site + lot, $"O{person}");
            }

            var findings = FollowUpAnalysis.Of(sketch.Tally(), Settings);

            foreach (var whole in new[] { findings.Positive, findings.Inconclusive })
            {
                foreach (var grouping in new[] { Grouping.Site, Grouping.Lot, Grouping.Operator })
                {
                    var parts = findings.Groups.Where(part => part.Grouping == grouping && part.Outcome == whole.Outcome).ToList();
                    (parts.Sum(part => part.Due), parts.Sum(part => part.Confirmed), parts.Sum(part => part.Refuted), parts.Sum(part => part.Unresolved),
                        parts.Sum(part => part.Pending), parts.Sum(part => part.Unverified)).Should()
                        .Be((whole.Due, whole.Confirmed, whole.Refuted, whole.Unresolved, whole.Pending, whole.Unverified));
                }

                whole.FollowThrough.Trials.Should().Be(whole.Due);
                whole.FollowThrough.Events.Should().Be(whole.Conclusive);
            }
        });

    [Fact]
    public void The_table_begins_with_the_columns_of_its_contract()
    {
        var table = FollowUpAnalysis.Of(new ProgramSketch().Runs(Outcome.Positive, 1, FollowUp.Pending).Tally(), Settings).Table;

        table.Id.Should().Be("follow-up");
        string.Join(',', table.Columns.Select(column => column.Name)).Should().StartWith("by,level,outcome,due,confirmed,refuted,unresolved,pending,unverified");
    }
}
