using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.StandOuts;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.StandOuts;

public class StandOutTests
{
    [Fact]
    public void A_faulty_lot_and_a_clumsy_site_lead_the_list_and_the_rest_does_not_stand_out()
    {
        var found = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), new ProgramSettings()).StandOuts;

        found.Rows.Where(row => row.StandsOut).Select(row => (row.Rank, row.By, row.Level, row.Measure))
            .Should().Equal([(1, "lot", "A]3", "refuted"), (2, "lot", "A2", "refuted"), (3, "site", "West", "invalid")], "the first has 40, the second all of the other 16");
        found.StandingOut.Should().Be(3);
        found.Rows.Where(row => !row.StandsOut).Should().OnlyContain(row => row.Rank == null && row.Verdict >= StandOutVerdict.NotMaterial);
        (found.StandingOut + found.Unremarkable + found.NotCompared).Should().Be(found.Rows.Select(row => (row.By, row.Level)).Distinct().Count());
    }

    [Fact]
    public void A_flagged_lot_that_was_used_alone_is_listed_as_not_comparable_at_its_site()
    {
        // Site North uses lot n-2 only, and no other site does: lot and site cannot be told apart.
        var sketch = new ProgramSketch();
        foreach (var site in new[] { "East", "South", "West" })
        {
            foreach (var lot in new[] { "a-1", "a-2" }) sketch.Runs(Outcome.Negative, 4_000, site: site, lot: lot).Runs(Outcome.Positive, 2, FollowUp.Refuted, site, lot);
        }

        sketch.Runs(Outcome.Negative, 4_000, site: "North", lot: "n-2").Runs(Outcome.Positive, 41, FollowUp.Refuted, "North", "n-2");

        var found = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).StandOuts;

        var lot2 = found.Rows.Single(row => row is { By: "lot", Level: "n-2", Measure: "refuted" });
        (lot2.Flagged, lot2.Material, lot2.Verdict).Should().Be((true, false, StandOutVerdict.StandsOutOverAll));
        found.Sentences.Select(sentence => sentence.Text).Should().Contain(text => text.StartsWith("Lot n-2 is flagged for its refuted positives, and no other lot was used at the same sites in the same weeks", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_nothing_can_be_compared_it_is_said_and_nothing_stands_out()
    {
        var found = Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 500, site: "East", lot: "a-1").Tally(), new ProgramSettings()).StandOuts;

        (found.StandingOut, found.Unremarkable, found.NotCompared).Should().Be((0, 0, 2));
        found.Rows.Should().OnlyContain(row => row.Verdict == StandOutVerdict.NotCompared && row.ExpectedUndefined != null);
        found.Sentences.Single().Text.Should().StartWith("2 lots and sites could be compared by nothing");
    }

    [Fact]
    public void Verdicts_have_names_of_their_own() =>
        Enum.GetValues<StandOutVerdict>().Select(StandOutNames.Of).Should().OnlyHaveUniqueItems();
}
