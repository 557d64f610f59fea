using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Cadence.Sojourn;
using ScreenStats.Statistics.Economics.Frontier;
using ScreenStats.Statistics.Economics.Yield;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Economics.Yield;

public sealed class YieldTests
{
    [Fact]
    public void Every_row_of_the_costs_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("cost-yields"), row =>
    {
        var items = row.Words("items").Select(word => word.Split('*')).Select((parts, index) => new CostItem($"item {index}", Amount(parts[0]), parts[1] == "-" ? null : Amount(parts[1])));
        var cost = ProgramCost.Of(items);
        var each = CostYield.Per(cost, Amount(row.Text("number")));
        return new[] { row.Mismatch("total", cost.Value), row.Mismatch("each", each.Value), row.Mismatch("lower", each.Lower), row.Mismatch("upper", each.Upper) };
    });

    [Fact]
    public void Every_row_of_the_marginal_costs_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("marginal-costs"), row =>
    {
        var steps = MarginalCost.Of([.. row.Pairs("steps").Select(pair => new OptionOutcome(pair.First, pair.Second))]);
        return
        [
            .. row.Differences("average", [.. steps.Select(step => step.AverageCost.Value)]), .. row.Differences("marginal", [.. steps.Select(step => step.MarginalCost.Value)]),
        ];
    });

    [Fact]
    public void The_six_stool_tests_have_the_marginal_costs_that_were_printed()
    {
        // Neuhauser, Lewicki, N Engl J Med 1975;293:226-228 (from memory); the fourth on were printed from rounded cases, the sixth so much so that 47 million was printed where 50 is right.
        var pool = new RepeatedTestPool
        {
            People = 10_000, Cases = 71.94207, Sensitivity = 11.0 / 12, ProneToFalsePositive = 846.8389, FalsePositiveChance = 0.365079, CostOfFirstTest = 4, CostOfFurtherTest = 1, CostOfWorkUp = 100,
        };
        var steps = MarginalCost.Of([.. RepeatedTest.Of(pool, 6).Select(step => new OptionOutcome(step.Cost, step.Cases))]);
        (double Printed, double Share)[] marginal = [(1175, 5e-4), (5492, 5e-4), (49_150, 5e-4), (469_534, 5e-4), (4_724_695, 5e-4), (47_107_214, 0.07)];
        foreach (var (step, (printed, share)) in steps.Zip(marginal)) step.MarginalCost.Value.Should().BeApproximately(printed, printed * share, $"test {step.Index + 1}");
        steps.Zip([77_511.0, 107_690, 130_199, 148_116, 163_141, 176_331]).Should().OnlyContain(pair => Math.Abs(pair.First.Outcome.Cost - pair.Second) <= 2);
        steps[5].AverageCost.Value.Should().BeApproximately(2451, 1, "the average hides the last step");
    }

    [Fact]
    public void Every_row_of_the_programs_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("program-yields"), row =>
    {
        var program = new ProgramYield(row.Count("screens"), row.Count("positives"), row.Count("confirmed"), row.Count("refuted"));
        var exact = ProportionInterval.ClopperPearson(program.Confirmed, program.Confirmed + program.Refuted);
        return new[]
        {
            row.Mismatch("positivity", program.Positivity.Estimate), row.Mismatch("follow_through", program.FollowThrough.Estimate), row.Mismatch("confirmed_share", program.ConfirmedShare.Estimate),
            row.Mismatch("share_lower", exact.Lower), row.Mismatch("share_upper", exact.Upper), row.Mismatch("per_10000", program.ConfirmedRate.Estimate * 10_000),
            row.Mismatch("per_confirmed", program.ScreensPerConfirmed.Value), row.Mismatch("per_refuted", program.ScreensPerRefuted.Value),
        };
    });

    [Fact]
    public void A_program_costs_for_each_case_and_each_infectious_day_what_was_worked_out()
    {
        // 1,000 people for a year, .0005 infections a person-day, window 7 days, s .6, Sp .9995, kit 5, confirmatory test 100: worked out before this code was written.
        var question = new CadenceQuestion
        {
            DetectableFrom = 0, DetectableTo = 7, Infectious = new Interval(0, 7), Sensitivity = 0.6, Specificity = 0.9995, Incidence = 0.0005, People = 1000,
        };
        (double Every, double Days, double Case, double Day)[] rows =
            [(1, 1064.93, 10_216.6, 1747.97), (2, 868.99, 5386.9, 1080.63), (3.5, 651.53, 3535.4, 831.85), (7, 383.25, 2504.8, 715.65), (14, 191.62, 2504.8, 715.65)];
        foreach (var (option, row) in CadenceComparison.Of(question, rows.Select(row => row.Every)).Zip(rows))
        {
            var (found, alarms) = (option.TruePositivesPerYear.Value!.Value, option.FalsePositivesPerYear.Value!.Value);
            var days = 365 * 1000 * 0.0005 * option.InfectiousDaysRemoved.Value!.Value;
            var cost = ProgramCost.Of([new CostItem("kits", new(1000 * option.ScreensPerPersonYear), new(5)), new CostItem("confirmatory tests", new(found + alarms), new(100))]);
            days.Should().BeApproximately(row.Days, 0.0051);
            CostYield.Per(cost, new(found)).Value.Should().BeApproximately(row.Case, 0.051);
            CostYield.Per(cost, new(days)).Value.Should().BeApproximately(row.Day, 0.0051);
        }
    }

    [Fact]
    public void The_share_confirmed_has_bounds_that_need_no_assumption()
    {
        // Gans et al., JAMA 2022;327:485-486: 641 of 1,103 followed up, of 1,322 positive.
        var program = new ProgramYield(903_408, 1322, 641, 462);
        program.ConfirmedShareBounds!.Value.Lower.Should().BeApproximately(641 / 1322.0, 1e-15);
        program.ConfirmedShareBounds!.Value.Upper.Should().BeApproximately(860 / 1322.0, 1e-15);
        program.RefutedRate.Estimate.Should().BeApproximately(0.0005114, 5e-8);
        (462 / 1103.0).Should().BeApproximately(1 - program.ConfirmedShare.Estimate!.Value, 1e-12);
        new ProgramYield(0, 0, 0, 0).ConfirmedShareBounds.Should().BeNull();
        new ProgramYield(10, 0, 0, 0).ScreensPerConfirmed.Reason.Should().Be(UndefinedReason.NoCases);
    }

    [Fact]
    public void A_missing_price_is_named_and_leaves_a_lower_bound()
    {
        var cost = ProgramCost.Of([new CostItem("kits", new(100), new(5)), new CostItem("supervision", new(100), null), new CostItem("outbreaks", new(0), null)]);
        cost.IsComplete.Should().BeFalse();
        cost.Missing.Should().Equal("supervision");
        var each = CostYield.Per(cost, new(4, 2, 5));
        (each.Value, each.Lower, each.Upper, each.Reason, each.UpperReason).Should().Be((null, 100, null, UndefinedReason.CostUnknown, UndefinedReason.CostUnknown));
        CostYield.Per(ProgramCost.Of([]), new(0)).Reason.Should().Be(UndefinedReason.NoEffect);
        CostYield.Per(ProgramCost.Of([]), new(4)).Value.Should().Be(0);
    }

    [Fact]
    public void Bounds_hold_for_every_choice_within_the_ranges() =>
        Gen.Select(Amounts.Array[1, 4], Amounts.Array[4], Amounts, Gen.Double[0, 1].Array[9]).Sample((units, prices, number, at) =>
        {
            double Within(StatedAmount amount, double share) => Math.Clamp(amount.Lower + (share * (amount.Upper - amount.Lower)), amount.Lower, amount.Upper);
            var each = CostYield.Per(ProgramCost.Of(units.Select((unit, index) => new CostItem("x", unit, prices[index]))), number);
            var sum = units.Select((unit, index) => Within(unit, at[index]) * Within(prices[index], at[index + 4])).Sum() / Within(number, at[8]);
            return each.Lower <= each.Value && each.Value <= each.Upper && sum >= each.Lower * (1 - 1e-12) && sum <= each.Upper * (1 + 1e-12);
        });

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new StatedAmount(-1), "value"), (() => _ = new StatedAmount(1, 2, 3), "lower"), (() => _ = new StatedAmount(1, 0, 0.5), "upper"),
            (() => _ = new ProgramYield(10, 3, 2, 2), "positives"), (() => _ = new ProgramYield(2, 3, 2, 1), "screens"), (() => _ = new ProgramYield(2, 1, -1, 1), "confirmed"),
            (() => _ = new ProgramYield(2, 1, 1, 0, 1), "confidence"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        FluentActions.Invoking(() => new CostItem(string.Empty, new(1), null)).Should().Throw<ArgumentException>().WithParameterName("name");
    }

    private static Gen<StatedAmount> Amounts => Gen.Select(Gen.Double[0.1, 1e4], Gen.Double[0, 1], Gen.Double[0, 5]).Select((value, down, up) => new StatedAmount(value, value * down, value * (1 + up)))
        .Where(amount => amount.Lower > 0);

    private static StatedAmount Amount(string text)
    {
        var parts = text.Split('/').Select(Lists.Number).ToArray();
        return parts.Length == 1 ? new StatedAmount(parts[0]) : new StatedAmount(parts[0], parts[1], parts[2]);
    }
}
