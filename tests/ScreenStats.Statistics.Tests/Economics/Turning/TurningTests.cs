using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Cadence.Intervals;
using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Economics.Turning;

namespace ScreenStats.Statistics.Tests.Economics.Turning;

public sealed class TurningTests
{
    private static readonly ScreenGain Example = new()
    {
        Prevalence = 0.01, Sensitivity = 0.6, Specificity = 0.99, CostOfScreen = 5, CostOfFalsePositive = 100, BenefitOfTruePositive = 1000,
    };

    private static readonly Gen<ScreenGain> Gains =
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 30], Gen.Double[0, 500], Gen.Double[0, 5000]).Select((p, s, sp, c, h, b) =>
            new ScreenGain { Prevalence = p, Sensitivity = s, Specificity = sp, CostOfScreen = c, CostOfFalsePositive = h, BenefitOfTruePositive = b });

    [Fact]
    public void Every_row_of_the_break_even_values_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("break-even-values"), row =>
    {
        var gain = new ScreenGain
        {
            Prevalence = row.Number("prevalence"), Sensitivity = row.Number("sensitivity"), Specificity = row.Number("specificity"), CostOfScreen = row.Number("cost"),
            CostOfFalsePositive = row.Number("false_positive"), BenefitOfTruePositive = row.Number("benefit"),
        };
        return new[]
        {
            // A gain is a difference of figures up to 1e5: it keeps the digits of those.
            Math.Abs(BreakEven.NetPerScreen(gain) - row.Number("net")) < 1e-9 ? null : row.Mismatch("net", BreakEven.NetPerScreen(gain)),
            row.Mismatch("at_specificity", BreakEven.Specificity(gain).Value), row.Mismatch("at_sensitivity", BreakEven.Sensitivity(gain).Value),
            row.Mismatch("at_cost", BreakEven.CostOfScreen(gain).Value), row.Mismatch("at_false_positive", BreakEven.CostOfFalsePositive(gain).Value),
            row.Mismatch("at_benefit", BreakEven.BenefitOfTruePositive(gain).Value), row.Mismatch("participation", BreakEven.Participation(gain, row.Number("due"), row.Number("fixed")).Value),
        };
    });

    [Fact]
    public void Every_row_of_the_break_even_prevalence_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("break-even-prevalence"), row => new[]
    {
        row.Mismatch("prevalence", BreakEven.Prevalence(new ScreenGain
        {
            Prevalence = 0, Sensitivity = row.Number("sensitivity"), Specificity = row.Number("specificity"), CostOfScreen = row.Number("cost"),
            CostOfFalsePositive = row.Number("false_positive"), BenefitOfTruePositive = row.Number("benefit"),
        }).Value),
    });

    [Fact]
    public void Every_row_of_the_turning_points_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("turning-points"), row =>
    {
        var (roots, sign) = (row.Numbers("roots"), row.Number("sign"));
        var found = TurningPoint.Of(value => roots.Aggregate(sign, (product, root) => product * (value - root)), row.Number("lower"), row.Number("upper"));
        return new[] { row.Mismatch("at", found.Value), row.Same("reason", found.Reason?.ToString() ?? string.Empty) };
    });

    [Fact]
    public void All_turning_points_of_these_rows_are_found_in_order_and_rise_and_fall_in_turns() => Mismatches.ShouldBeNone(ReferenceTable.Load("turning-points"), row =>
    {
        var (roots, sign) = (row.Numbers("roots"), row.Number("sign"));
        double Gain(double value) => roots.Aggregate(sign, (product, root) => product * (value - root));
        var found = TurningPoint.All(Gain, row.Number("lower"), row.Number("upper"));
        // A root that comes twice is touched, not crossed.
        var inside = roots.GroupBy(root => root).Where(group => group.Count() % 2 == 1).Select(group => group.Key).Where(root => root > row.Number("lower") && root < row.Number("upper")).Order().ToList();
        return new[]
        {
            found.Length == inside.Count && found.Zip(inside, (place, root) => Math.Abs(place.Value - root) < 1e-11).All(same => same) ? null : $"{string.Join(' ', found)} where {string.Join(' ', inside)} is",
            found.All(place => Gain(place.Value + 1e-3) > 0 == place.Rises) ? null : "a direction is wrong",
        };
    });

    [Fact]
    public void Every_row_of_the_numbers_needed_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("numbers-needed"), row =>
    {
        Estimate Counted() => row.Text("of") == "case"
            ? NumberNeeded.PerCase(row.Count("first"), row.Count("first_of"), row.Number("confidence"))
            : NumberNeeded.PerEventAverted(new TwoProportions(row.Count("first"), row.Count("first_of"), row.Count("second"), row.Count("second_of")), row.Number("confidence"));
        var found = row.Text("of") switch
        {
            "stated" => NumberNeeded.PerCase(row.Number("first"), row.Number("first_of")),
            "risks" => NumberNeeded.PerEventAverted(row.Number("first"), row.Number("first_of")),
            _ => Counted(),
        };
        return new[] { row.Mismatch("number", found.Value), row.Mismatch("lower", found.Lower), row.Mismatch("upper", found.Upper) };
    });

    [Fact]
    public void At_each_break_even_value_a_screen_gains_nothing() => Gains.Sample(gain =>
    {
        bool Turns(Estimate at, Func<double, ScreenGain> set) => at.Value is not { } value || Math.Abs(BreakEven.NetPerScreen(set(value))) <= 1e-9 * (1 + Scale(set(value)));
        return Turns(BreakEven.Prevalence(gain), value => gain with { Prevalence = value }) && Turns(BreakEven.Specificity(gain), value => gain with { Specificity = value })
            && Turns(BreakEven.Sensitivity(gain), value => gain with { Sensitivity = value }) && Turns(BreakEven.CostOfScreen(gain), value => gain with { CostOfScreen = value })
            && Turns(BreakEven.CostOfFalsePositive(gain), value => gain with { CostOfFalsePositive = value })
            && Turns(BreakEven.BenefitOfTruePositive(gain), value => gain with { BenefitOfTruePositive = value });
    });

    [Fact]
    public void Where_there_is_no_break_even_value_the_screen_pays_always_or_never() => Gains.Sample(gain =>
    {
        bool Right(Estimate at, Func<double, ScreenGain> set) => at.Reason switch
        {
            null => true,
            UndefinedReason.AlwaysPays => BreakEven.NetPerScreen(set(0)) >= -1e-9 && BreakEven.NetPerScreen(set(1)) >= -1e-9,
            UndefinedReason.NeverPays => BreakEven.NetPerScreen(set(0)) <= 1e-9 && BreakEven.NetPerScreen(set(1)) <= 1e-9,
            _ => false,
        };
        return Right(BreakEven.Specificity(gain), value => gain with { Specificity = value }) && Right(BreakEven.Sensitivity(gain), value => gain with { Sensitivity = value })
            && (BreakEven.CostOfScreen(gain).Reason is null || BreakEven.NetPerScreen(gain with { CostOfScreen = 0 }) < 0);
    });

    [Fact]
    public void The_search_finds_what_the_closed_forms_give()
    {
        TurningPoint.Of(p => BreakEven.NetPerScreen(Example with { Prevalence = p }), 0, 1).Value.Should().BeApproximately(BreakEven.Prevalence(Example).Value!.Value, 1e-12);
        TurningPoint.Of(sp => BreakEven.NetPerScreen(Example with { Specificity = sp }), 0, 1).Value.Should().BeApproximately(BreakEven.Specificity(Example).Value!.Value, 1e-12);
        TurningPoint.Of(c => BreakEven.NetPerScreen(Example with { CostOfScreen = c }), 0, 100).Value.Should().BeApproximately(BreakEven.CostOfScreen(Example).Value!.Value, 1e-12);

        // Worked out before this code was written: half of the positives are false at a prevalence of .000833 (s .6, Sp .9995); screening begins to pay at .002449 infections a person-day.
        TurningPoint.Of(p => PredictiveValue.Positive(0.6, 0.9995, p).Value!.Value - 0.5, 0, 0.01).Value.Should().BeApproximately(0.000833, 5e-7);
        double Best(double incidence) => BestInterval.NetAtBest(new ScreeningStakes(incidence, 200, 12, 7)).Value ?? -1;
        TurningPoint.Of(Best, 1e-4, 0.1, 1000).Value.Should().BeApproximately(0.002449, 5e-7);
    }

    [Fact]
    public void A_number_needed_without_a_bound_says_why()
    {
        NumberNeeded.PerEventAverted(new TwoProportions(30, 100, 29, 100)).Reason.Should().Be(UndefinedReason.MayDoNothing);
        NumberNeeded.PerEventAverted(new TwoProportions(30, 100, 30, 100)).Reason.Should().Be(UndefinedReason.DoesNothing);
        NumberNeeded.PerEventAverted(new TwoProportions(30, 100, 40, 100)).Reason.Should().Be(UndefinedReason.DoesHarm);
        NumberNeeded.PerEventAverted(new TwoProportions(0, 0, 40, 100)).IsDefined.Should().BeFalse();
        NumberNeeded.PerEventAverted(0.2, 0.2).Reason.Should().Be(UndefinedReason.DoesNothing);
        NumberNeeded.PerCase(0, 10).Lower.Should().BeGreaterThan(1);
        NumberNeeded.PerCase(0L, 0L).Reason.Should().Be(UndefinedReason.NoTrials);
        NumberNeeded.PerCase(1e-200, 1e-200).Reason.Should().Be(UndefinedReason.TooLarge);
    }

    [Fact]
    public void Limits_of_numbers_needed_stand_around_them() =>
        Gen.Select(Gen.Long[1, 500], Gen.Long[0, 5000], Gen.Long[1, 500], Gen.Long[0, 5000]).Sample((x, more, y, others) =>
        {
            var found = NumberNeeded.PerCase(x, x + more);
            var averted = NumberNeeded.PerEventAverted(new TwoProportions(x, x + more, y, y + others));
            return found.Lower >= 1 && found.Lower <= found.Value && found.Value <= found.Upper && (averted.Value is not { } value || (averted.Lower <= value && value <= averted.Upper && value >= 1));
        });

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => BreakEven.NetPerScreen(Example with { Prevalence = 2 }), "Prevalence"), (() => BreakEven.Prevalence(Example with { Sensitivity = -1 }), "Sensitivity"),
            (() => BreakEven.Specificity(Example with { CostOfScreen = -1 }), "CostOfScreen"), (() => BreakEven.Sensitivity(Example with { CostOfFalsePositive = double.NaN }), "CostOfFalsePositive"),
            (() => BreakEven.CostOfScreen(Example with { BenefitOfTruePositive = -2 }), "BenefitOfTruePositive"), (() => BreakEven.CostOfFalsePositive(Example with { Specificity = 1.1 }), "Specificity"),
            (() => BreakEven.Participation(Example, -1, 1), "screensDue"), (() => BreakEven.Participation(Example, 1, -1), "fixedCost"),
            (() => TurningPoint.Of(x => x, 1, 1), "upper"), (() => TurningPoint.Of(x => x, double.NaN, 1), "lower"), (() => TurningPoint.Of(x => x, 0, 1, 0), "steps"),
            (() => NumberNeeded.PerCase(2.0, 0.5), "prevalence"), (() => NumberNeeded.PerEventAverted(0.5, 2), "riskWith"), (() => NumberNeeded.PerCase(5L, 4L), "successes"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        FluentActions.Invoking(() => TurningPoint.Of(_ => double.NaN, 0, 1)).Should().Throw<ArgumentException>().WithParameterName("net");
    }

    private static double Scale(ScreenGain gain) => gain.CostOfScreen + gain.CostOfFalsePositive + gain.BenefitOfTruePositive;
}
