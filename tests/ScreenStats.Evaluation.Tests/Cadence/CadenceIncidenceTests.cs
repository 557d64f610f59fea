using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Tests.Sketches;

namespace ScreenStats.Evaluation.Tests.Cadence;

public class CadenceIncidenceTests
{
    private static readonly CadenceSettings FromCases = CadenceSketch.Exact with { Incidence = null, People = null, Worthwhile = 1 };

    [Fact]
    public void The_cases_of_the_last_four_weeks_are_told_with_the_option_that_they_would_ask_for()
    {
        // 40 people on 20 Mondays: 133 days and one; the last four of the Mondays are the last 28 days, a fifth of the screens.
        var settings = FromCases with { Worthwhile = 6 };
        var findings = Cadence(settings, early: 15, late: 1);
        var recent = findings.Recent!;
        (recent.Days, recent.Cases, recent.AllCases, recent.Pending).Should().Be((28, 1L, 16L, 0L));
        recent.AllPerHundredThousand.Estimate.Should().BeApproximately(1e5 * findings.Inputs.Incidence.Estimate!.Value, 1e-9);
        recent.PerHundredThousand.Estimate.Should().BeApproximately(recent.AllPerHundredThousand.Estimate!.Value * (1.0 / 16) / 0.2, 1e-9);
        recent.PerHundredThousand.Lower.Should().BeGreaterThan(0).And.BeLessThan(recent.PerHundredThousand.Estimate!.Value);
        // 1 of 4 parts against 15 of 16 parts; limits of 1 of 16 by binom.test of R 4: 0.00158111172277 to 0.30232073843453.
        recent.Ratio.Estimate.Should().BeApproximately(1.0 / 15 * 4, 1e-12);
        recent.Ratio.Lower.Should().BeApproximately(0.00158111172277 / (1 - 0.00158111172277) * 4, 1e-7);
        recent.Ratio.Upper.Should().BeApproximately(0.30232073843453 / (1 - 0.30232073843453) * 4, 1e-7);
        findings.Assumption("incidence-last-days").Value.Should().BeApproximately(recent.PerHundredThousand.Estimate.Value / 1e5, 1e-15);
        var expected = Cadence(settings with { Incidence = new StatedRange(recent.PerHundredThousand.Estimate.Value / 1e5) }, 15, 1).Options.Single(option => option.IsChosen).Option;
        recent.Option.Should().Be(expected);
        expected.Should().NotBe(findings.Leading!.Option, "the test is to show a change");
        findings.Text().Should().Contain("Of the 16 cases 1 fell in the last 28 days of the data").And.Contain($"were infection to stay as rare as that, the option would be \"{expected}\"");
    }

    [Fact]
    public void No_case_in_the_last_weeks_is_a_rate_of_none_with_an_upper_limit()
    {
        var recent = Cadence(FromCases, early: 8, late: 0).Recent!;
        recent.PerHundredThousand.Estimate.Should().Be(0);
        recent.PerHundredThousand.Upper.Should().BeGreaterThan(0);
        recent.Option.Should().Be("none");
    }

    [Fact]
    public void Where_it_cannot_be_told_nothing_is_said_of_the_last_weeks()
    {
        Cadence(FromCases with { Incidence = new StatedRange(0.001) }, 8, 1).Recent.Should().BeNull("the incidence is stated");
        Cadence(FromCases, 0, 0).Recent.Should().BeNull("there is no case");
        CadenceSketch.Program(screens: 5).Cadence(FromCases).Recent.Should().BeNull("the data are 29 days");
        Cadence(FromCases, early: 0, late: 3).Recent!.Ratio.EstimateUndefined.Should().Contain("no case before");
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.4)]
    public void On_each_side_of_every_change_the_option_is_the_one_chosen_with_that_incidence_stated(double broughtIn)
    {
        var settings = CadenceSketch.Exact with { Worthwhile = 3, BroughtIn = new StatedRange(broughtIn) };
        var tally = CadenceSketch.Program();
        var ranges = tally.Cadence(settings).Ranges;
        string Chosen(double perHundredThousand) => tally.Cadence(settings with { Incidence = new StatedRange(perHundredThousand / 1e5) }).Options.Single(option => option.IsChosen).Option;

        ranges.Length.Should().BeGreaterThan(3);
        (ranges[0].From, ranges[0].Option, ranges[^1].To).Should().Be((0, "none", null));
        ranges.Count(range => range.HasData).Should().Be(1);
        for (var index = 1; index < ranges.Length; index++)
        {
            ranges[index].From.Should().Be(ranges[index - 1].To);
            Chosen(ranges[index].From * 1.0001).Should().Be(ranges[index].Option);
            Chosen(ranges[index].From * 0.9999).Should().Be(ranges[index - 1].Option);
        }
    }

    [Fact]
    public void Where_all_are_brought_in_the_first_change_is_the_price_by_what_a_screen_removes()
    {
        // Intervals longer than the window: days removed and screens both go with the number of screens. Chosen is the longest run of them, monthly or fortnightly: both change at once.
        var findings = CadenceSketch.Program().Cadence(CadenceSketch.Exact with { Worthwhile = 0.1 });
        var (monthly, price) = (findings.Steps.First(step => step.Leads), 0.1);
        // Infections are 1 - exp(-λ days): per 1,000 screens g (1 - exp(-λ 91)) / (1 - exp(-0.0005 × 91)) = price.
        var expected = -Math.Log(1 - (price / monthly.PerThousandScreens.Estimate!.Value * (1 - Math.Exp(-0.0005 * 91)))) / 91 * 1e5;
        findings.Ranges[0].To.Should().BeApproximately(expected, expected * 1e-5);
    }

    [Fact]
    public void Without_a_price_there_are_no_changes_and_the_page_still_has_its_table()
    {
        var findings = Cadence(FromCases with { Worthwhile = null }, 8, 1);
        findings.Ranges.Should().BeEmpty();
        findings.Recent!.Option.Should().BeNull();
        findings.Text().Should().Contain("fell in the last 28 days");
        findings.RangeTable.RowCount.Should().Be(0);
    }

    [Fact]
    public void What_one_case_would_cause_without_screening_stands_among_the_assumptions_and_where_it_grows_that_is_told()
    {
        var settings = CadenceSketch.Ranged with { BroughtIn = new StatedRange(0.45, 0.2, 0.8) };
        var findings = CadenceSketch.Program().Cadence(settings);
        var row = findings.Assumption("reproduction-without-screening");
        var (removed, alone) = (findings.Value(CadenceOptionFinding.AsDone, CadenceMeasure.ShareRemoved), 1.0);
        // The infections inside shrink too: by the ratio of R alone it is (1 - b) / (1 - removed per infection beyond symptoms).
        row.Value.Should().BeGreaterThan(0.55).And.BeLessThan(0.55 / (1 - removed));
        row.Lower.Should().BeLessThan(row.Value!.Value);
        row.Upper.Should().BeGreaterThan(alone);
        findings.Growth!.ShareGrowing.Should().BeInRange(0.01, 0.5);
        findings.Text().Should().Contain("infection would grow by itself");
        // What follows is what gives the same when it is stated.
        var exact = CadenceSketch.Exact with { BroughtIn = new StatedRange(0.6) };
        var derived = CadenceSketch.Program().Cadence(exact);
        var stated = CadenceSketch.Program().Cadence(exact with { Reproduction = new StatedRange(derived.Growth!.Reproduction.Estimate!.Value) });
        stated.Growth.Should().BeNull();
        stated.Assumptions.Should().NotContain(assumption => assumption.Assumption == "reproduction-without-screening");
        stated.Value("daily", CadenceMeasure.InfectionsAverted).Should().BeApproximately(derived.Value("daily", CadenceMeasure.InfectionsAverted), 1e-9);
        CadenceSketch.Program().Cadence(exact).Text().Should().NotContain("grow by itself");
    }

    [Fact]
    public void False_alarms_of_flagged_lots_that_are_left_out_are_told()
    {
        var builder = new ProgramSketch();
        builder.Runs(Outcome.Negative, 4_000).Runs(Outcome.Positive, 4, FollowUp.Confirmed).Runs(Outcome.Positive, 2, FollowUp.Refuted);
        builder.Runs(Outcome.Negative, 400, lot: "B2").Runs(Outcome.Positive, 40, FollowUp.Refuted, lot: "B2");
        var settings = CadenceSketch.Exact with { Specificity = null, Worthwhile = 0.1 };
        var findings = Evaluator.Evaluate(builder.Tally(), new ProgramSettings { Cadence = settings }).Cadence;
        (findings.FalseAlarmsFound!.Refuted, findings.FalseAlarmsFound.OfFlaggedLots).Should().Be((42L, 40L));
        findings.Text().Should().Contain("42 positives were refuted").And.Contain("40 of them of flagged lots");
        Evaluator.Evaluate(builder.Tally(), new ProgramSettings { Cadence = settings with { Specificity = CadenceSketch.Exact.Specificity } }).Cadence.FalseAlarmsFound.Should().BeNull("the specificity is stated");
    }

    /// <summary>Forty people on twenty Mondays; so many cases on the tenth of them, and so many on the last.</summary>
    private static CadenceFindings Cadence(CadenceSettings settings, int early, int late)
    {
        var builder = new TallyCellsBuilder();
        for (var person = 0; person < 40; person++)
        {
            for (var week = 0; week < 20; week++)
            {
                var positive = (week == 10 && person < early) || (week == 19 && person >= early && person < early + late);
                builder.Add("p" + person.ToString(System.Globalization.CultureInfo.InvariantCulture), positive ? Outcome.Positive : Outcome.Negative, positive ? FollowUp.Confirmed : FollowUp.None, day: 7 * week);
            }
        }

        return Tally.FromCells(builder.Cells() with { HasConfirmatory = true }).Cadence(settings);
    }
}
