using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

/// <summary>What holds for the average of the data need not hold for their last days; and how sure a verdict is, said of what was really moved.</summary>
public class WorthPeriodTests
{
    private static readonly CadenceSettings FromCases = WorthSketch.Cadence with { Incidence = null, People = null };
    private static readonly CostSettings Costs = WorthSketch.Exact with { InfectionAverted = new StatedRange(4_000), InfectiousDay = null };

    // 182 days in which eight of forty people are found: five of them in the first half, two in the first weeks of the second, one in its last four.
    private static Tally Waning()
    {
        int[] found = [21, 28, 35, 63, 70, 98, 126, 175];
        var builder = new TallyCellsBuilder();
        for (var person = 0; person < 40; person++)
        {
            for (var day = 0; day <= 182; day += 7)
            {
                var positive = person < found.Length && day == found[person];
                builder.Add(FormattableString.Invariant($"p{person}"), positive ? Outcome.Positive : Outcome.Negative, positive ? FollowUp.Confirmed : FollowUp.None, lot: "L-1", day: day);
            }
        }

        return Tally.FromCells(builder.Cells() with { HasConfirmatory = true });
    }

    [Fact]
    public void The_last_quarter_and_the_last_four_weeks_stand_beside_all_days()
    {
        var findings = Waning().Worth(Costs, FromCases);
        findings.Periods.Select(row => (row.Period, row.Days, row.Cases)).Should().Equal(("all-days", 183, 8), ("last-91-days", 91, 3), ("last-28-days", 28, 1));
        var all = findings.Periods[0].WeeklyIncidence.Estimate!.Value;
        all.Should().BeApproximately(findings.Turn("weekly-incidence")!.Present!.Value, 1e-9);
        // As many screens in each week: by their share of the 27 of each person.
        (findings.Periods[1].WeeklyIncidence.Estimate!.Value / all).Should().BeApproximately(3.0 / 8 / (13.0 / 27), 1e-9);
        (findings.Periods[2].WeeklyIncidence.Estimate!.Value / all).Should().BeApproximately(1.0 / 8 / (4.0 / 27), 1e-9);
        foreach (var row in findings.Periods)
        {
            row.WeeklyIncidence.Lower.Should().BeLessThan(row.WeeklyIncidence.Estimate!.Value);
            WorthRung Rung(double? weekly) => findings.Ladder.Last(rung => rung.From <= weekly);
            (row.Option, row.Confirmation).Should().Be((Rung(row.WeeklyIncidence.Estimate).Option, Rung(row.WeeklyIncidence.Estimate).Confirmation));
            (row.ConfirmationAtLower, row.ConfirmationAtUpper).Should().Be((Rung(row.WeeklyIncidence.Lower).Confirmation, Rung(row.WeeklyIncidence.Upper).Confirmation));
            var there = Waning().Worth(Costs, FromCases with { Incidence = new StatedRange(row.WeeklyIncidence.Estimate.Value / 7000) });
            row.NetBenefit.Should().BeApproximately(there.Judged!.NetBenefit.Estimate!.Value, 1e-6 * Math.Abs(row.NetBenefit) + 1e-6);
        }

        findings.Text().Should().MatchRegex("Infection was not the same all the time: in the last 91 days, with [0-9,]+ cases?, ").And.MatchRegex("; in the last 28 days, with [0-9,]+ cases?, ").And.MatchRegex("where (no screening|\"[a-z-]+\") gains most( \\(at the upper limit \"[a-z-]+\"\\))?; the average of all days is ");
    }

    [Fact]
    public void Without_days_to_set_apart_or_with_a_stated_incidence_there_are_none()
    {
        Waning().Worth(Costs, WorthSketch.Cadence).Periods.Should().BeEmpty();
        CadenceSketch.Program(screens: 4).Worth(Costs, FromCases).Periods.Should().BeEmpty();
        Waning().Worth(new CostSettings(), FromCases).Text().Should().NotContain("all the time");
    }

    [Fact]
    public void The_share_of_draws_that_pay_is_said_to_hold_the_value_and_given_at_the_ends_of_its_range()
    {
        var findings = CadenceSketch.Program().Worth(WorthSketch.Ranged with { InfectionAverted = new StatedRange(30_000, 5_000, 90_000) }, WorthSketch.RangedCadence);
        double At(double value) => CadenceSketch.Program().Worth(WorthSketch.Ranged with { InfectionAverted = new StatedRange(value) }, WorthSketch.RangedCadence).PaysShare!.Value;
        findings.PaysShare.Should().Be(At(30_000));
        findings.PaysShareAtLower.Should().Be(At(5_000)).And.BeLessThan(findings.PaysShare!.Value);
        findings.PaysShareAtUpper.Should().Be(At(90_000)).And.BeGreaterThan(findings.PaysShare.Value);
        findings.Text().Should().MatchRegex("over everything that has a range but the value of one infection averted, which is held at 30,000 \\([0-9.]+ % at 5,000, [0-9.]+ % at 90,000\\)\\.");
        var exact = CadenceSketch.Program().Worth(WorthSketch.Ranged with { InfectionAverted = new StatedRange(30_000) }, WorthSketch.RangedCadence);
        exact.PaysShareAtLower.Should().BeNull();
        exact.Text().Should().Contain("which is held at 30,000.");
    }

    [Fact]
    public void A_mean_far_from_the_centre_says_why()
    {
        // Most is brought in or most spreads inside: in the second kind of draw infection grows by itself. With a value just short of what repays the cost the centre lies below 0 and the mean above.
        var wide = WorthSketch.RangedCadence with { BroughtIn = new StatedRange(0.55, 0.05, 0.95), Incidence = new StatedRange(0.001, 0.0005, 0.002), Planned = CadenceWords.Usual.Single(option => option.Name == "daily") };
        WorthFindings At(double value) => CadenceSketch.Program().Worth(WorthSketch.Ranged with { InfectionAverted = new StatedRange(value) }, wide);
        var findings = At(At(20_000).Turn("value-of-effect")!.BreakEven!.Value * 0.999);
        var judged = findings.Judged!;
        findings.GrowingShare.Should().BeGreaterThan(0).And.BeLessThan(1);
        findings.MeanWithoutGrowing!.Value.Should().NotBe(judged.MeanNetBenefit!.Value);
        var (mean, centre, net) = (judged.MeanNetBenefit.Value, judged.NetBenefit.Estimate!.Value, judged.NetBenefit);
        var far = mean > 0 != centre > 0 || Math.Abs(mean - centre) > 0.5 * Math.Min(centre - net.Lower!.Value, net.Upper!.Value - centre);
        far.Should().BeTrue("the test is of such a program");
        findings.Text().Should().MatchRegex("on average, far from the [0-9,-]+ at the central figures: in [0-9.]+ % of the draws one case infects at least one other without screening, .* without these draws the average is [0-9,-]+\\.");
        CadenceSketch.Program().Worth().Text().Should().NotContain("far from the ", "with nothing uncertain the mean is the centre");
    }
}
