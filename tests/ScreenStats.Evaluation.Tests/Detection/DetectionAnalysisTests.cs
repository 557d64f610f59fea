using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Detection;

public class DetectionAnalysisTests
{
    [Fact]
    public void Chances_are_those_of_the_rule_in_force_by_simulation()
    {
        // Ten lots of 800 tests, one in a hundred refuted: a lot with three times as many, judged by the evaluation's own step-down.
        var sketch = new ProgramSketch();
        for (var lot = 0; lot < 10; lot++) sketch.Runs(Outcome.Negative, 792, lot: "L" + lot).Runs(Outcome.Positive, 8, FollowUp.Refuted, lot: "L" + lot);
        var row = Evaluate(sketch).Detection.Rows.Single(row => row is { Measure: "refuted", Size: "median", Times: 3 });
        (row.Trials, row.OtherTrials, row.Lots, row.Rate).Should().Be((800, 7200, 10, 0.01));

        var random = new Random(7);
        long Draw(double rate)
        {
            long events = 0;
            for (var test = 0; test < 800; test++) events += random.NextDouble() < rate ? 1 : 0;
            return events;
        }

        const int Programs = 2000;
        var flagged = 0;
        for (var program = 0; program < Programs; program++)
        {
            var lots = Enumerable.Range(0, 10).Select(lot => new FlagCandidate("L" + lot, 800, Draw(lot == 0 ? 0.03 : 0.01)));
            if (StepDown.Judge(lots, _ => "")["L0"].Flagged) flagged++;
        }

        var error = Math.Sqrt(row.Chance!.Value * (1 - row.Chance.Value) / Programs);
        ((double)flagged / Programs).Should().BeApproximately(row.Chance.Value, (3 * error) + 0.005);
    }

    [Fact]
    public void The_manager_is_told_what_would_be_missed()
    {
        var found = Evaluate(ExamplePrograms.FaultyLotAndClumsySite()).Detection;

        found.Sentences.Should().Contain(sentence => sentence.Text.StartsWith("A lot with a tenth of the runs and five times the inconclusive and invalid runs would be flagged in "));
        found.Rows.Where(row => row.Times == 1).Should().OnlyContain(row => row.Chance <= 0.01);
    }

    [Fact]
    public void With_one_lot_or_without_events_it_is_said_why_there_is_nothing()
    {
        var one = Evaluate(new ProgramSketch().Runs(Outcome.Negative, 90).Runs(Outcome.Invalid, 3)).Detection;
        one.Rows.Should().BeEmpty();
        one.Sentences[0].Text.Should().EndWith("fewer than two lots are recorded, so none can be flagged.");

        var none = Evaluate(new ProgramSketch().Runs(Outcome.Negative, 90, lot: "A").Runs(Outcome.Negative, 90, lot: "B")).Detection;
        none.Sentences[0].Text.Should().EndWith("no refuted positive outside of flagged lots.");
    }

    private static Findings Evaluate(ProgramSketch sketch) => Evaluator.Evaluate(sketch.Tally(), new ProgramSettings());
}
