using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Monitoring.Acceptance;
using ScreenStats.Statistics.Planning;

namespace ScreenStats.Statistics.Tests.Monitoring.Acceptance;

public sealed class OperatingCharacteristicTests
{
    private static readonly Gen<SamplingPlan> Plans = Gen.Select(Gen.Long[1, 400], Gen.Double[0, 1]).Select((n, part) => new SamplingPlan(n, (long)(part * part * part * n)));

    [Fact]
    public void Every_row_of_the_acceptance_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("acceptance"), row =>
    {
        var plan = new SamplingPlan(row.Count("size"), row.Count("acceptance_number"));
        double? At(CountModel model) => row.Has("rate") ? OperatingCharacteristic.Acceptance(plan, row.Number("rate"), model) : null;
        double? Rate(CountModel model) => row.Has("accepted") ? OperatingCharacteristic.RateAccepted(plan, row.Number("accepted"), model) : null;
        return
        [
            row.Mismatch("binomial", At(CountModel.Binomial)), row.Mismatch("poisson", At(CountModel.Poisson)),
            row.Mismatch("hypergeometric", row.Has("lot_size") ? OperatingCharacteristic.Acceptance(plan, row.Count("lot_size"), row.Count("defective")) : null),
            row.Mismatch("rate_binomial", Rate(CountModel.Binomial)), row.Mismatch("rate_poisson", Rate(CountModel.Poisson)),
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_outgoing_quality_and_double_plans_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("outgoing-quality"), row =>
    {
        if (row.Has("second_size"))
        {
            var two = new DoubleSamplingPlan(row.Count("size"), row.Count("acceptance_number"), row.Count("first_rejection"), row.Count("second_size"), row.Count("acceptance"));
            var accepted = OperatingCharacteristic.Acceptance(two, row.Number("rate"));
            var rest = row.Numbers("second_and_size");
            return
            [
                row.Mismatch("accepted", accepted.OnFirst), row.Within(rest[0], accepted.OnSecond) ? null : $"{row}: second {accepted.OnSecond}",
                rest.Count < 2 || row.Within(rest[1], accepted.ExpectedSize) ? null : $"{row}: size {accepted.ExpectedSize}",
            ];
        }

        var plan = new SamplingPlan(row.Count("size"), row.Count("acceptance_number"));
        var at = OperatingCharacteristic.Outgoing(plan, row.Count("lot_size"), row.Number("rate"));
        var limit = OperatingCharacteristic.OutgoingLimit(plan, row.Count("lot_size"));
        return
        [
            row.Mismatch("accepted", at.Acceptance), row.Mismatch("outgoing", at.AverageOutgoing), row.Mismatch("tested", at.AverageTested),
            row.Mismatch("limit_rate", limit.Rate), row.Mismatch("limit", limit.AverageOutgoing),
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_smallest_plans_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("smallest-plans"), row =>
    {
        var found = OperatingCharacteristic.Smallest(row.Number("good"), row.Number("producers_risk"), row.Number("bad"), row.Number("consumers_risk"));
        return
        [
            row.Mismatch("size", found.Plan?.Size), row.Mismatch("acceptance_number", found.Plan?.AcceptanceNumber), row.Mismatch("accepted_good", found.AcceptedAtGood),
            row.Mismatch("accepted_bad", found.AcceptedAtBad),
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_flag_curves_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("flag-curves"), row =>
    {
        var rule = new FlagRule { Rate = row.Number("rate"), OtherTrials = row.Count("others"), Lots = (int)row.Count("lots"), Threshold = row.Number("threshold") };
        return [row.Mismatch("chance", FlagCurve.Chance(rule, row.Count("trials"), row.Number("ratio")))];
    });

    [Fact]
    public void Each_table_has_at_least_fifty_independent_rows()
    {
        foreach (var name in new[] { "acceptance", "outgoing-quality", "smallest-plans", "flag-curves" })
            ReferenceTable.Load(name).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, name);
    }

    [Fact]
    public void A_worse_lot_is_accepted_less_often_and_a_quantile_is_where_it_says() => Gen.Select(Plans, Gen.Double[0, 0.99], Gen.Double[0.001, 0.999]).Sample((plan, rate, chance) =>
    {
        bool Meets(CountModel model) => OperatingCharacteristic.RateAccepted(plan, chance, model) is not { } at || Math.Abs(OperatingCharacteristic.Acceptance(plan, at, model) - chance) < 1e-9;
        return OperatingCharacteristic.Acceptance(plan, rate) >= OperatingCharacteristic.Acceptance(plan, rate + 0.01) - 1e-12 && Meets(CountModel.Binomial) && Meets(CountModel.Poisson)
            && OperatingCharacteristic.Outgoing(plan, 1000, rate).AverageOutgoing <= OperatingCharacteristic.OutgoingLimit(plan, 1000).AverageOutgoing + 1e-12;
    });

    [Fact]
    public void A_double_plan_without_doubt_is_a_single_one() => Gen.Select(Plans, Gen.Double[0, 1]).Sample((plan, rate) =>
    {
        var two = OperatingCharacteristic.Acceptance(new DoubleSamplingPlan(plan.Size, plan.AcceptanceNumber, plan.AcceptanceNumber + 1, 10, plan.AcceptanceNumber), rate);
        return two.OnSecond == 0 && two.ExpectedSize == plan.Size && Math.Abs(two.Total - OperatingCharacteristic.Acceptance(plan, rate)) < 1e-12;
    });

    [Fact]
    public void A_fault_is_flagged_more_often_the_worse_it_is_and_a_good_lot_no_more_often_than_the_level() =>
        Gen.Select(Gen.Double[1e-4, 0.02], Gen.Long[10, 2000], Gen.Long[100, 20_000], Gen.Int[1, 20]).Sample((rate, trials, others, lots) =>
        {
            var rule = new FlagRule { Rate = rate, OtherTrials = others, Lots = lots };
            var chances = new[] { 0, 0.5, 1, 2, 5, 20 }.Select(ratio => FlagCurve.Chance(rule, trials, ratio)).ToArray();
            return chances.Zip(chances.Skip(1)).All(pair => pair.First <= pair.Second + 1e-12) && chances[2] <= (0.01 / lots) + 1e-9;
        }, iter: 40);

    [Fact]
    public void The_curve_at_an_excess_is_the_power_that_planning_computes()
    {
        var power = LotPower.Of(new LotQuestion { ExpectedRate = 0.002, Excess = 0.018, Lots = 8, OtherRuns = 20_000 }, 700);
        FlagCurve.Chance(new FlagRule { Rate = 0.002, OtherTrials = 20_000, Lots = 8 }, 700, 10).Should().BeApproximately(power, 1e-14);
    }

    [Fact]
    public void Several_ratios_at_once_give_the_same_chances_and_a_chance_gives_its_ratio_back() =>
        Gen.Select(Gen.Double[1e-4, 0.02], Gen.Long[10, 2000], Gen.Long[100, 20_000], Gen.Int[1, 20], Gen.Double[0.05, 0.95]).Sample((rate, trials, others, lots, wanted) =>
        {
            var rule = new FlagRule { Rate = rate, OtherTrials = others, Lots = lots };
            double[] ratios = [0, 1, 3, 10];
            if (!FlagCurve.Chances(rule, trials, ratios).SequenceEqual(ratios.Select(ratio => FlagCurve.Chance(rule, trials, ratio)))) return false;
            return FlagCurve.Ratio(rule, trials, wanted) is { } found
                ? Math.Abs(FlagCurve.Chance(rule, trials, Math.Min(found, 1 / rate)) - wanted) < 1e-4 || found * rate > 1 - 1e-6
                : FlagCurve.Chance(rule, trials, 1 / rate) < wanted;
        }, iter: 40);

    // With one lot beside so many others that their rate is known, the rule is a single plan: reject from the first number whose tail is below the level.
    [Fact]
    public void Beside_very_many_others_the_rule_is_a_single_sampling_plan()
    {
        var rule = new FlagRule { Rate = 0.001, OtherTrials = 9_990_000, Threshold = 0.01 };
        var critical = 0;
        while (Hypergeometric.UpperTail(critical + 1, 9_995_000, 9_990 + critical + 1, 5000) >= 0.01) critical++;
        var accepted = OperatingCharacteristic.Acceptance(new SamplingPlan(5000, critical), 0.003);
        FlagCurve.Chance(rule, 5000, 3).Should().BeApproximately(1 - accepted, 0.01);
    }

    [Fact]
    public void A_plan_that_does_not_exist_says_so()
    {
        var none = OperatingCharacteristic.Smallest(1e-6, 0.01, 1.0000001e-6, 0.01);
        (none.Plan, none.Reason).Should().Be((null, UndefinedReason.NoPlanWithinLimits));
        OperatingCharacteristic.RateAccepted(new SamplingPlan(5, 5), 0.5).Should().BeNull();
        OperatingCharacteristic.OutgoingLimit(new SamplingPlan(5, 5), 100).AverageOutgoing.Should().BeApproximately(0.95, 1e-15);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var plan = new SamplingPlan(50, 2);
        var rule = new FlagRule { Rate = 0.01, OtherTrials = 1000 };
        foreach (var (call, name) in new (Action, string)[]
        {
            (() => _ = new SamplingPlan(0, 0), "size"), (() => _ = new SamplingPlan(5, 6), "acceptanceNumber"), (() => OperatingCharacteristic.Acceptance(default(SamplingPlan), 0.1), "plan"),
            (() => OperatingCharacteristic.Acceptance(plan, 1.1), "rate"), (() => OperatingCharacteristic.Acceptance(plan, -1, CountModel.Poisson), "rate"), (() => OperatingCharacteristic.Acceptance(plan, 0.1, (CountModel)9), "model"),
            (() => OperatingCharacteristic.Acceptance(plan, 40, 1), "lotSize"), (() => OperatingCharacteristic.Acceptance(plan, 60, 61), "defective"), (() => OperatingCharacteristic.RateAccepted(plan, 1), "acceptance"),
            (() => OperatingCharacteristic.Smallest(0.1, 0.05, 0.1, 0.1), "badRate"), (() => OperatingCharacteristic.Smallest(0.1, 0, 0.2, 0.1), "producersRisk"), (() => OperatingCharacteristic.Smallest(0.1, 0.1, 0.2, 1), "consumersRisk"),
            (() => _ = new DoubleSamplingPlan(50, 1, 1, 100, 3), "firstRejection"), (() => _ = new DoubleSamplingPlan(50, 1, 4, 100, 0), "acceptance"), (() => OperatingCharacteristic.Acceptance(default(DoubleSamplingPlan), 0.1), "plan"),
            (() => FlagCurve.Chance(rule, 0, 1), "trials"), (() => FlagCurve.Chance(rule, 10, 101), "ratio"), (() => FlagCurve.Ratio(rule, 10, 1), "chance"), (() => FlagCurve.Ratio(rule, 0, 0.5), "trials"), (() => FlagCurve.Chance(rule with { Rate = 0 }, 10, 1), "Rate"),
            (() => FlagCurve.Chance(rule with { OtherTrials = 0 }, 10, 1), "OtherTrials"), (() => FlagCurve.Chance(rule with { Lots = 0 }, 10, 1), "Lots"), (() => FlagCurve.Chance(rule with { Threshold = 1 }, 10, 1), "Threshold"),
        })
        {
            call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        }
    }
}
