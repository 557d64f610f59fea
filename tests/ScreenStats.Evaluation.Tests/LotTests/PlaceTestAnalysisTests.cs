using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.LotTests;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Evaluation.Tests.LotTests;

public class PlaceTestAnalysisTests
{
    private static readonly string[] Sites = ["East", "North", "South"];

    [Fact]
    public void One_site_and_week_with_equal_follow_through_is_Fishers_exact_test()
    {
        var sketch = new ProgramSketch()
            .Runs(Outcome.Negative, 400, lot: "A").Runs(Outcome.Invalid, 9, lot: "A")
            .Runs(Outcome.Negative, 900, lot: "B").Runs(Outcome.Invalid, 4, lot: "B");

        var row = Evaluate(sketch).LotTests.Rows.Single(row => row.Key == "A|invalid");

        (row.Strata, row.Observed).Should().Be((1, 9));
        row.Expected.Should().BeApproximately(13 * 409 / 1313.0, 1e-12);
        row.P.Should().BeApproximately(FisherExact.Greater(9, 409, 4, 904), 1e-12);
        row.PHolm.Should().BeApproximately(2 * row.P!.Value, 1e-12);
    }

    [Fact]
    public void A_lot_with_several_times_the_others_refuted_positives_is_material_and_alone()
    {
        var found = Evaluate(Program((lot, _) => lot == "C" ? 8 : 1)).LotTests;

        found.Rows.Where(row => row.Material).Select(row => row.Key).Should().Equal("C|refuted");
        var row = found.Rows.Single(row => row.Key == "C|refuted");
        row.Ratio.Estimate.Should().BeApproximately(8, 1e-6, "runs are equal in every site-week");
        row.Ratio.Lower.Should().BeGreaterThan(1.5);
        row.ChanceAboveTwice.Should().BeInRange(0.9, 1, "the program's rate holds a third of faulty tests");
        found.Sentences[0].Text.Should().StartWith("Lot C needs looking into: 96 refuted positives where 40.0 would be expected");
        found.Sentences[^1].Text.Should().Contain("at most 1 %").And.Contain("not proved good");
    }

    [Fact]
    public void Of_very_many_sites_those_that_are_found_in_one_round_leave_together_and_the_rest_are_tested_without_them()
    {
        var sketch = new ProgramSketch();
        for (var site = 0; site <= StrataJudge.MostOneByOne; site++)
        {
            var name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Site {site:000}");
            sketch.Runs(Outcome.Negative, 200, site: name).Runs(Outcome.Invalid, site is 7 or 50 or 93 ? 40 : 4, site: name);
        }

        var rows = Evaluate(sketch).SiteTests.Rows.Where(row => row.Measure == "invalid").ToList();
        rows.Where(row => row.Material).Select(row => row.Place).Should().Equal("Site 007", "Site 050", "Site 093");
        rows.Where(row => row.Material).Should().OnlyContain(row => row.P == rows[7].P, "all were found in the first round");
        rows.Where(row => !row.Material).Should().OnlyContain(row => Math.Abs(row.Expected - 4) < 1e-9, "of the others each has what it is to have");
    }

    [Fact]
    public void The_lots_of_a_clumsy_site_are_not_blamed_for_it()
    {
        // Lot C is used at South most, where every lot has ten times the unusable runs.
        var sketch = new ProgramSketch();
        foreach (var site in Sites)
        {
            foreach (var lot in new[] { "A", "B", "C" })
            {
                for (var week = 0; week < 4; week++)
                {
                    var runs = (site == "South") == (lot == "C") ? 400 : 100;
                    sketch.Runs(Outcome.Negative, runs, site: site, lot: lot, day: 7 * week).Runs(Outcome.Invalid, site == "South" ? runs / 10 : runs / 100, site: site, lot: lot, day: 7 * week);
                }
            }
        }

        var findings = Evaluate(sketch);

        findings.LotTests.Rows.Should().NotContain(row => row.Measure == "invalid" && (row.Material || row.PHolm < 0.5));
        findings.LotTests.Rows.Single(row => row.Key == "C|invalid").ChanceAboveTwice.GetValueOrDefault().Should().BeLessThan(0.01);
        findings.SiteTests.Rows.Where(row => row.Material).Select(row => row.Key).Should().Equal("South|invalid");
    }

    [Fact]
    public void A_lot_whose_positives_are_followed_up_half_as_often_is_expected_to_have_fewer_refuted()
    {
        var sketch = new ProgramSketch();
        foreach (var site in Sites)
        {
            sketch.Runs(Outcome.Negative, 1000, site: site, lot: "A").Runs(Outcome.Positive, 40, FollowUp.Refuted, site, "A")
                .Runs(Outcome.Negative, 1000, site: site, lot: "B").Runs(Outcome.Positive, 20, FollowUp.Refuted, site, "B").Runs(Outcome.Positive, 20, FollowUp.Unverified, site, "B");
        }

        var row = Evaluate(sketch).LotTests.Rows.Single(row => row.Key == "A|refuted");

        row.Observed.Should().Be(120);
        row.Expected.Should().BeInRange(115, 120, "B was followed up half as often");
        row.Material.Should().BeFalse();
    }

    [Fact]
    public void A_lot_that_finds_hardly_a_case_where_the_others_find_many_may_miss_people()
    {
        var sketch = new ProgramSketch();
        foreach (var site in Sites)
        {
            foreach (var lot in new[] { "A", "B", "C" })
            {
                sketch.Runs(Outcome.Negative, 500, site: site, lot: lot).Runs(Outcome.Positive, lot == "C" ? 1 : 12, FollowUp.Confirmed, site, lot);
            }
        }

        var found = Evaluate(sketch).LotTests;

        found.Rows.Where(row => row.LowYield).Select(row => row.Key).Should().Equal("C|cases");
        found.Sentences[0].Text.Should().StartWith("Lot C may miss infected people").And.Contain("look at the negatives of this lot");
        found.Rows.Single(row => row.Key == "C|cases").Material.Should().BeFalse("too few is no excess");
    }

    [Fact]
    public void A_lot_whose_positive_control_swabs_fail_may_miss_people()
    {
        ControlCell Control(string lot, Outcome outcome, long runs) =>
            new("North", lot, Levels.None, TallyCellsBuilder.Monday, null, Levels.None, ControlExpectation.Positive, outcome, runs);
        var cells = new TallyCellsBuilder().Add("a", Outcome.Negative, lot: "A").Add("b", Outcome.Negative, lot: "B").Cells() with
        {
            Controls = [Control("A", Outcome.Positive, 30), Control("B", Outcome.Positive, 10), Control("B", Outcome.Negative, 12)],
        };

        var found = Evaluator.Evaluate(Tally.FromCells(cells), new ProgramSettings()).LotTests;

        var row = found.Rows.Single(row => row.LowYield);
        row.Key.Should().Be("B|failed-controls");
        row.P.Should().BeApproximately(FisherExact.Greater(12, 22, 0, 30), 1e-12);
        found.Sentences[0].Text.Should().StartWith("Lot B may miss infected people: 12 of its positive control swabs failed");
    }

    [Fact]
    public void An_outbreak_in_some_site_weeks_widens_the_limits_of_cases()
    {
        // In each site-week one lot has all cases, by turns: as people infected together are.
        var sketch = new ProgramSketch();
        for (var week = 0; week < 9; week++)
        {
            foreach (var lot in new[] { "A", "B", "C" })
            {
                sketch.Runs(Outcome.Negative, 300, lot: lot, day: 7 * week).Runs(Outcome.Positive, "ABC"[week % 3] == lot[0] ? 12 : 0, FollowUp.Confirmed, lot: lot, day: 7 * week);
            }
        }

        var found = Evaluate(sketch).LotTests;

        found.Families.Single(family => family.Measure == "cases").Should().Match<PlaceTestFamily>(family => family.Overdispersion > 5 && family.OverdispersionFrom == "strata");
        found.Rows.Should().NotContain(row => row.LowYield);
    }

    [Fact]
    public void Lots_used_each_at_its_own_site_are_not_compared_and_it_is_said()
    {
        var sketch = new ProgramSketch()
            .Runs(Outcome.Negative, 400, site: "East", lot: "A").Runs(Outcome.Positive, 30, FollowUp.Refuted, "East", "A")
            .Runs(Outcome.Negative, 400, site: "West", lot: "B");

        var found = Evaluate(sketch).LotTests;

        found.Rows.Should().OnlyContain(row => row.P == null && row.PUndefined != null && !row.Material);
        found.Sentences.Single().Text.Should().Be("No lot was used beside another at the same sites in the same weeks with an event to compare, so nothing can be said of any.");
    }

    [Fact]
    public void Runs_without_a_lot_are_no_lot_and_without_confirmatory_export_nothing_is_refuted()
    {
        var found = Evaluate(Program((_, _) => 0).Runs(Outcome.Negative, 50, lot: Levels.None).WithoutConfirmatory()).LotTests;

        found.Rows.Should().NotContain(row => row.Place == Levels.None);
        found.Rows.Where(row => row.Measure == "refuted").Should().OnlyContain(row => row.PUndefined!.Contains("no confirmatory export"));
    }

    [Fact]
    public void The_faulty_lot_of_the_published_program_is_material_and_its_sites_are_not_blamed()
    {
        var findings = Evaluate(PublishedProgram.Sketch());

        findings.LotTests.Rows.Where(row => row.Material || row.LowYield).Select(row => row.Key).Should().BeSubsetOf([PublishedProgram.FaultyLot + "|refuted"]);
        findings.SiteTests.Rows.Should().NotContain(row => row.Material);
        findings.SiteTests.LeftOut.Should().Contain(PublishedProgram.FaultyLot);
        var burst = findings.Bursts.Rows.Single(row => row.Measure == "refuted");
        (burst.Lot, burst.Observed).Should().Be((PublishedProgram.FaultyLot, 278));
        (burst.LastDay!.Value.DayNumber - burst.FirstDay!.Value.DayNumber).Should().Be(13);
    }

    private static ProgramSketch Program(Func<string, int, int> refuted)
    {
        var sketch = new ProgramSketch();
        foreach (var site in Sites)
        {
            foreach (var lot in new[] { "A", "B", "C" })
            {
                for (var week = 0; week < 4; week++)
                {
                    sketch.Runs(Outcome.Negative, 500 - refuted(lot, week), site: site, lot: lot, day: 7 * week).Runs(Outcome.Positive, refuted(lot, week), FollowUp.Refuted, site, lot, 7 * week);
                }
            }
        }

        return sketch;
    }

    private static Findings Evaluate(ProgramSketch sketch) => Evaluator.Evaluate(sketch.Tally(), new ProgramSettings());
}
