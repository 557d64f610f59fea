using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Bursts;

public class BurstAnalysisTests
{
    [Fact]
    public void A_burst_is_found_with_its_lot_site_days_and_chance()
    {
        var sketch = Quiet();
        for (var day = 20; day < 24; day++) sketch.Runs(Outcome.Positive, 4, FollowUp.Refuted, "North", "A", day);

        var row = Row(sketch, "refuted");

        (row.Lot, row.Site, row.Observed, row.FirstDay, row.LastDay).Should().Be(("A", "North", 16, ProgramSketch.FirstDay.AddDays(20), ProgramSketch.FirstDay.AddDays(23)));
        row.Expected.Should().BeLessThan(2);
        row.ChanceUnderNoBurst.Should().BeLessThan(0.01);
        (row.Replicates, row.Seed, row.LongestDays).Should().Be((999, 1UL, 28));
        Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Bursts.Sentences[0].Text.Should().StartWith("Strongest burst of refuted positives: 16 with lot A at site North, from 2026-01-25 to 2026-01-28, where");
    }

    [Fact]
    public void A_site_with_many_unusable_runs_on_every_day_is_no_burst()
    {
        var sketch = new ProgramSketch();
        for (var day = 0; day < 56; day++)
        {
            foreach (var lot in new[] { "A", "B" })
            {
                sketch.Runs(Outcome.Negative, 45, site: "North", lot: lot, day: day).Runs(Outcome.Invalid, 5, site: "North", lot: lot, day: day);
                sketch.Runs(Outcome.Negative, 49, site: "South", lot: lot, day: day).Runs(Outcome.Invalid, 1, site: "South", lot: lot, day: day);
            }
        }

        var row = Row(sketch, "unusable");

        row.ChanceUnderNoBurst.Should().BeGreaterThan(0.2);
        row.Replicates.Should().Be(39, "the first ones said enough");
        Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Bursts.Sentences[1].Text.Should().EndWith("so it says little.");
    }

    [Fact]
    public void An_outbreak_is_said_to_be_no_fault()
    {
        var sketch = Quiet();
        for (var day = 20; day < 30; day++) sketch.Runs(Outcome.Positive, 3, FollowUp.Confirmed, "North", "A", day).Runs(Outcome.Positive, 3, FollowUp.Confirmed, "South", "B", day);

        Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Bursts.Sentences[2].Text.Should().Contain("in the whole program").And.EndWith("People may have been infected together, an outbreak inside, or more of them outside: confirmed cases are hardly a fault of kits or site.");
    }

    [Fact]
    public void Without_events_there_is_no_burst_and_it_is_said_why()
    {
        var found = Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 50).WithoutConfirmatory().Tally(), new ProgramSettings()).Bursts;

        found.Rows.Should().OnlyContain(row => row.Undefined != null && row.ChanceUnderNoBurst == null && row.FirstDay == null);
        found.Sentences[0].Text.Should().Be("No burst of refuted positives: there is no confirmatory export, so no positive could be confirmed or refuted.");
    }

    private static ProgramSketch Quiet()
    {
        var sketch = new ProgramSketch();
        for (var day = 0; day < 56; day++)
        {
            foreach (var site in new[] { "North", "South" })
            {
                foreach (var lot in new[] { "A", "B" })
                {
                    sketch.Runs(Outcome.Negative, 50, site: site, lot: lot, day: day).Runs(Outcome.Positive, day % 14 == 0 ? 1 : 0, FollowUp.Refuted, site, lot, day);
                }
            }
        }

        return sketch;
    }

    private static Evaluation.Bursts.BurstRow Row(ProgramSketch sketch, string measure) =>
        Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Bursts.Rows.Single(row => row.Measure == measure);
}
