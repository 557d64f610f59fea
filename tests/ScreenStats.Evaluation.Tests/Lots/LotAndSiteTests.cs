using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Lots;

public class LotAndSiteTests
{
    [Fact]
    public void A_flagged_lot_says_how_many_where_and_when_and_what_it_does_not_say()
    {
        var findings = Evaluator.Evaluate(ExamplePrograms.FaultyLotAndClumsySite().Tally(), new ProgramSettings());

        var lot = findings.Lots.Single(lot => lot.Lot == "A]3");
        lot.Flag.Should().Be(Flag.Refuted);
        (lot.Refuted, lot.Conclusive).Should().Be((40, 72));
        lot.RefutedPlaces.Should().Equal(new FlaggedPlace("East", 40, new DateOnly(2026, 1, 13), new DateOnly(2026, 1, 13)));
        lot.RefutedConcentration!.Names.Should().Equal("East");
        var text = string.Join(' ', findings.Lots.Sentences.Select(sentence => sentence.Text));
        text.Should().Contain("Lot A]3 needs looking into: 40 of its 72 positives with a conclusive confirmatory result were refuted.");
        text.Should().Contain("All 40 of its refuted positives were at site East, on 2026-01-13.");
        text.Should().Contain("does not say that its positives were false, nor that anybody may return to work");
        findings.Sites.Where(site => site.Flag != Flag.None).Select(site => (site.Site, site.Flag)).Should().Equal(("West", Flag.Invalid));
        string.Join(' ', findings.Sites.Sentences.Select(sentence => sentence.Text)).Should().Contain("Site West needs looking into: 496 of its 4,416 runs gave no valid result (16 inconclusive, 480 invalid).");
    }

    [Fact]
    public void Where_refuted_positives_are_spread_over_few_sites_the_fewest_that_hold_four_in_five_are_named()
    {
        var sketch = Background();
        foreach (var (site, refuted, day) in new[] { ("S1", 20, 3), ("S2", 12, 9), ("S3", 4, 60), ("S4", 4, 70) })
            sketch.Runs(Outcome.Positive, refuted, FollowUp.Refuted, site, "bad", day);

        var lot = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Lots.Single(lot => lot.Lot == "bad");

        lot.RefutedPlaces.Select(place => (place.Name, place.Events)).Should().Equal(("S1", 20), ("S2", 12), ("S3", 4), ("S4", 4));
        (lot.RefutedConcentration!.Names.Length, lot.RefutedConcentration.Events).Should().Be((2, 32), "32 of 40 are just four in five");
        Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Lots.Sentences.Select(sentence => sentence.Text)
            .Should().Contain("32 of its 40 refuted positives were at sites S1 and S2, from 2026-01-08 to 2026-01-14.");
        (lot.RefutedConcentration.FirstDay, lot.RefutedConcentration.LastDay).Should().Be((new DateOnly(2026, 1, 8), new DateOnly(2026, 1, 14)));
    }

    [Fact]
    public void Only_refuted_positives_count_as_refuted_not_refuted_inconclusive_runs()
    {
        // At every site alike: at one alone they would be laid at the site's door.
        var sketch = Background();
        foreach (var site in new[] { "S1", "S2", "S3", "S4" }) sketch.Runs(Outcome.Inconclusive, 15, FollowUp.Refuted, site, "odd");

        var lot = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Lots.Single(lot => lot.Lot == "odd");

        (lot.Refuted, lot.Flag).Should().Be((0, Flag.Invalid));
    }

    [Fact]
    public void Both_tables_have_the_columns_of_the_design_first_and_write_flags_as_it_says()
    {
        var sketch = Background().Runs(Outcome.Positive, 40, FollowUp.Refuted, "S1", "bad").Runs(Outcome.Invalid, 90, site: "S2", lot: "bad")
            .Runs(Outcome.Invalid, 30, site: "S1", lot: "bad").Runs(Outcome.Invalid, 30, site: "S3", lot: "bad").Runs(Outcome.Invalid, 30, site: "S4", lot: "bad");
        var findings = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings());

        string[] columns = ["runs", "inconclusive", "invalid", "invalid_p", "invalid_p_holm", "tests", "positives", "confirmed", "refuted", "refuted_p", "refuted_p_holm", "flag"];
        findings.Lots.ToTable().Columns.Take(13).Select(column => column.Name).Should().Equal(["lot", .. columns]);
        findings.Sites.ToTable().Columns.Take(13).Select(column => column.Name).Should().Equal(["site", .. columns]);
        var lots = findings.Lots.ToTable();
        var flags = Enumerable.Range(0, lots.RowCount).ToDictionary(row => lots.CellAt(row, 0).AsText, row => lots.CellAt(row, 12));
        flags["bad"].AsText.Should().Be("refuted-and-invalid");
        flags["good-1"].Kind.Should().Be(CellKind.Empty);
        flags.Keys.Should().BeInAscendingOrder(StringComparer.Ordinal);
    }

    [Fact]
    public void P_values_of_lots_are_of_the_pool_without_runs_that_have_no_lot()
    {
        var sketch = Background().Runs(Outcome.Negative, 5000, site: "S1", lot: Levels.None).Runs(Outcome.Positive, 50, FollowUp.Refuted, "S1", Levels.None);

        var lots = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings()).Lots;

        var none = lots.Single(lot => lot.Lot == Levels.None);
        (none.Runs, none.Refuted, none.RefutedP, none.Flag).Should().Be((5050, 50, null, Flag.None));
        lots.Where(lot => lot.Lot != Levels.None).Should().OnlyContain(lot => lot.RefutedTest.PoolEvents == 8);
        lots.Sentences.Select(sentence => sentence.Text).Should().Contain("5,050 runs have no lot recorded, with 50 refuted positives among them. They are in no comparison of lots.");
    }

    [Fact]
    public void One_site_or_no_lot_is_said_to_leave_nothing_to_compare()
    {
        var findings = Evaluator.Evaluate(new ProgramSketch().Runs(Outcome.Negative, 50, lot: Levels.None).Tally(), new ProgramSettings());

        findings.Lots.Sentences.Single().Text.Should().Be("No lot is recorded, so lots cannot be compared.");
        findings.Sites.Sentences.Single().Text.Should().Contain("one site only");
        findings.Sites.Single().RefutedP.Should().Be(1);
    }

    [Fact]
    public void A_flagged_site_is_spoken_of_without_the_refuted_positives_of_flagged_lots()
    {
        var sketch = Background();
        for (var site = 1; site <= 3; site++) sketch.Runs(Outcome.Positive, 15, FollowUp.Refuted, $"S{site}", "bad");
        for (var lot = 1; lot <= 4; lot++) sketch.Runs(Outcome.Positive, 9, FollowUp.Refuted, "S4", $"good-{lot}", lot);

        var findings = Evaluator.Evaluate(sketch.Tally(), new ProgramSettings());

        findings.Lots.Where(lot => lot.Flag != Flag.None).Select(lot => lot.Lot).Should().Equal("bad");
        findings.Sites.Where(site => site.Flag != Flag.None).Select(site => site.Site).Should().Equal("S4");
        findings.Sites.Sentences.Select(sentence => sentence.Text).Should().Contain(text => text.EndsWith("were with 4 lots, from 2026-01-05 to 2026-01-09.", StringComparison.Ordinal));
    }

    /// <summary>Four good lots at four sites, 1,000 negative runs and half a refuted positive each.</summary>
    private static ProgramSketch Background()
    {
        var sketch = new ProgramSketch();
        for (var site = 1; site <= 4; site++)
        {
            for (var lot = 1; lot <= 4; lot++)
            {
                sketch.Runs(Outcome.Negative, 1000, site: $"S{site}", lot: $"good-{lot}");
                sketch.Runs(Outcome.Positive, (site + lot) % 2, FollowUp.Refuted, $"S{site}", $"good-{lot}");
                sketch.Runs(Outcome.Invalid, 2, site: $"S{site}", lot: $"good-{lot}");
            }

            sketch.Runs(Outcome.Negative, 250, site: $"S{site}", lot: "bad").Runs(Outcome.Negative, 250, site: $"S{site}", lot: "odd");
        }

        return sketch;
    }
}
