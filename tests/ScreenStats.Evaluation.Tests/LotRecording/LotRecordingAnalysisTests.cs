using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.LotRecording;

public class LotRecordingAnalysisTests
{
    [Fact]
    public void Runs_without_a_lot_are_counted_by_site_with_what_they_hide()
    {
        var sketch = new ProgramSketch();
        foreach (var site in new[] { "East", "North" })
        {
            foreach (var lot in new[] { "A", "B" }) sketch.Runs(Outcome.Negative, 5000, site: site, lot: lot).Runs(Outcome.Positive, 10, FollowUp.Refuted, site, lot);
        }

        sketch.Runs(Outcome.Negative, 1000, site: "North", lot: Levels.None).Runs(Outcome.Positive, 2, FollowUp.Refuted, "North", Levels.None);

        var found = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).LotRecording;

        (found.Program.WithoutLot.Events, found.Program.WithoutLot.Trials, found.Program.RefutedWithoutLot, found.Program.Refuted).Should().Be((1002, 21042, 2, 42));
        var north = found.Sites.Single(site => site.Level == "North");
        (north.TestsWithoutLot, north.WithoutLot.Events).Should().Be((1002, 1002));
        north.SeenFrom.Should().BeGreaterThan(north.RecordedSeenFrom!.Value, "a fault is diluted by the site's other runs");
        found.Sites.Single(site => site.Level == "East").SeenFromUndefined.Should().Be("every valid test has a lot");
        found.Sentences[1].Text.Should().StartWith("What that hides: site North has most of them, 1,002 valid tests");
    }

    [Fact]
    public void Where_every_run_has_a_lot_only_that_is_said() =>
        Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 70).Tally(), new ProgramSettings()).LotRecording.Sentences.Select(sentence => sentence.Text)
            .Should().Equal("Every one of 70 runs has a lot recorded.");
}
