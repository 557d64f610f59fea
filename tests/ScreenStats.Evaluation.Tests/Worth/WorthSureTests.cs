using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Tests.Cadence;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Tests.Worth;

public class WorthSureTests
{
    private static readonly WorthFindings Ranged = CadenceSketch.Program().Worth(WorthSketch.Ranged, WorthSketch.RangedCadence);

    [Fact]
    public void Acceptability_adds_up_to_one_at_each_value_with_one_option_to_choose()
    {
        Ranged.Acceptability.Should().NotBeEmpty();
        foreach (var value in Ranged.Acceptability.GroupBy(row => row.Value))
        {
            value.Sum(row => row.Share).Should().BeApproximately(1, 1e-9);
            value.Count(row => row.OnFrontier).Should().Be(1);
        }

        // At the stated value it is the table of options.
        foreach (var row in Ranged.Acceptability.Where(row => row.Value == Ranged.Value)) row.Share.Should().BeApproximately(Ranged.Options.Single(option => option.Key == row.Option).BestShare!.Value, 1e-12);
        Ranged.Choices().Sum(option => option.BestShare!.Value).Should().BeApproximately(1, 1e-9);
        Ranged.Acceptability.Where(row => row.Value == 0 && row.OnFrontier).Single().Option.Should().Be("none|not-needed", "what gains nothing is not paid for");
        var chosen = Ranged.Acceptability.Single(row => row.Value == Ranged.Value && row.OnFrontier).Option;
        Ranged.Choices().MaxBy(option => option.MeanNetBenefit)!.Key.Should().Be(chosen);
    }

    [Fact]
    public void Of_equal_options_the_earlier_one_is_the_best()
    {
        var free = new Counting.Programs.Costs.CostSettings
        {
            Screen = new StatedRange(0), ConfirmatoryTest = new StatedRange(0), IsolationDay = new StatedRange(0), WorkingDay = new StatedRange(0), InfectionAverted = new StatedRange(4000),
        };
        var findings = CadenceSketch.Program().Worth(free, WorthSketch.RangedCadence);
        findings.Option("daily").BestShare.Should().Be(1, "it averts most, and costs as much with a confirmatory test as without: nothing");
        findings.Option("daily", WorthConfirmation.Without).BestShare.Should().Be(0);
        findings.Choices().Sum(option => option.BestShare!.Value).Should().Be(1);
    }

    [Fact]
    public void Knowing_is_never_worth_less_than_nothing_and_one_figure_never_more_than_everything()
    {
        var everything = Ranged.Information.Single(row => row.Parameter == "everything");
        everything.Value.Should().BeGreaterThan(0);
        Ranged.Information.Should().OnlyContain(row => row.Value >= 0 && row.Value <= everything.Value);
        Ranged.Information.Select(row => row.Parameter).Should().Contain(["kit", "operator-hour", "confirmatory-test", "sensitivity", "brought-in"]).And.OnlyHaveUniqueItems();
        Ranged.Information.Should().NotContain(row => row.Parameter == "waste", "it is taken as exact");
    }

    [Fact]
    public void A_swing_has_its_figure_at_both_ends_and_the_widest_leads()
    {
        Ranged.Swings.Select(row => row.Swing).Should().BeInDescendingOrder();
        var hour = Ranged.Swings.Single(row => row.Figure == "operator-hour");
        (hour.AtLower, hour.AtUpper).Should().Be((25, 40));
        // Minutes of an operator are 4: between the ends each screen costs 1 more.
        var screens = 200 * 91 / 7.0;
        (hour.Low - hour.High).Should().BeApproximately(screens * 4 * 15 / 60, 1e-6);
        var value = Ranged.Swings.Single(row => row.Figure == "value-of-effect");
        (value.High - value.Low).Should().BeApproximately((8000 - 2000) * Ranged.Judged!.Effect.Estimate!.Value, 1e-6);
    }

    [Fact]
    public void The_same_seed_gives_the_same_figures_and_another_other_ones()
    {
        var again = CadenceSketch.Program().Worth(WorthSketch.Ranged, WorthSketch.RangedCadence);
        again.Options.Should().Equal(Ranged.Options);
        again.Information.Should().Equal(Ranged.Information);
        again.Acceptability.Should().Equal(Ranged.Acceptability);
        var other = CadenceSketch.Program().Worth(WorthSketch.Ranged, WorthSketch.RangedCadence with { Seed = 2 });
        other.Option("weekly").Cost.Estimate.Should().Be(Ranged.Option("weekly").Cost.Estimate);
        other.Option("weekly").Cost.Upper.Should().NotBe(Ranged.Option("weekly").Cost.Upper);
    }

    [Fact]
    public void A_range_more_does_not_move_the_draws_of_the_others()
    {
        var exact = CadenceSketch.Program().Worth(WorthSketch.Ranged with { WorkingDay = new StatedRange(250), Outbreak = null }, WorthSketch.RangedCadence);
        exact.Option("weekly").Effect.Should().Be(Ranged.Option("weekly").Effect);
        var information = exact.Information.Where(row => row.Parameter == "kit").Should().ContainSingle().Subject;
        information.Value.Should().BeGreaterThanOrEqualTo(0);
    }

    [Fact]
    public void A_price_is_drawn_within_its_stated_ends_in_95_of_100_draws()
    {
        // Nothing else is uncertain: the cost is a straight line in the price of a screen.
        foreach (var (value, lower, upper) in new[] { (3.0, 2.0, 5.0), (14, 7, 26), (18, 8, 40), (4, 2, 4.5) })
        {
            WorthOption With(StatedRange screen) => CadenceSketch.Program().Worth(WorthSketch.Exact with { Screen = screen }, WorthSketch.Cadence).Option("weekly");
            var (ranged, low, high) = (With(new StatedRange(value, lower, upper)).Cost, With(new StatedRange(lower)).Cost.Estimate!.Value, With(new StatedRange(upper)).Cost.Estimate!.Value);
            // Standard error of a 2.5 % quantile of 2,000 draws of a smooth distribution: about 3 % of the width.
            ranged.Lower!.Value.Should().BeApproximately(low, 0.06 * (high - low));
            ranged.Upper!.Value.Should().BeApproximately(high, 0.1 * (high - low));
        }
    }

    [Fact]
    public void A_wide_range_of_a_small_price_is_drawn_between_its_ends()
    {
        var wide = CadenceSketch.Program().Worth(WorthSketch.Exact with { Screen = new StatedRange(0, 0, 10), ConfirmatoryTest = new StatedRange(1, 0, 1000) }, WorthSketch.Cadence);
        var row = wide.Option("weekly");
        row.Cost.Upper!.Value.Should().BeGreaterThan(row.Cost.Estimate!.Value);
        row.Cost.Lower!.Value.Should().BeLessThanOrEqualTo(row.Cost.Estimate!.Value);
    }

    [Fact]
    public void Verifying_negatives_is_offered_where_the_sensitivity_is_uncertain()
    {
        Ranged.Information[^1].Should().Match<WorthInformation>(row => row.Parameter == "sample-of-negatives" && row.Sample > 0 && row.SampleCost == 60 * row.Sample);
        var exact = CadenceSketch.Program().Worth(WorthSketch.Ranged, WorthSketch.RangedCadence with { Sensitivity = new StatedAccuracy(0.6, null, null, null, null) });
        exact.Information.Should().NotContain(row => row.Sample != null);
    }
}
