using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Comparison;

public sealed class TwoProportionTests
{
    private static readonly Gen<(ContrastMeasure Measure, ContrastMethod Method)> Methods =
        Gen.Int[0, 7].Select(i => ContrastMethods.Measures.SelectMany(measure => ContrastMethods.Of(measure).Select(method => (measure, method))).ElementAt(i));

    private static readonly Gen<long> Trials = Gen.OneOf(Gen.Long[1, 12], Gen.Long[1, 400], Gen.Long[1, 1_000_000]);

    private static readonly Gen<double> Share = Gen.OneOf(Gen.Double[0, 1], Gen.Double[0, 1].Select(u => u * u * u * u), Gen.Const(0.0), Gen.Const(1.0));

    private static readonly Gen<TwoProportions> Counts = Gen.Select(Trials, Share, Trials, Share)
        .Select((n1, one, n2, two) => new TwoProportions((long)Math.Round(n1 * one), n1, (long)Math.Round(n2 * two), n2));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("two-proportions"), row =>
        {
            var counts = new TwoProportions(row.Count("first_successes"), row.Count("first_trials"), row.Count("second_successes"), row.Count("second_trials"));
            var result = Contrasts.Of(row.Text("measure"), row.Text("method"), counts, row.Number("confidence"));
            return [row.Mismatch("value", result.Value), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void Each_method_has_at_least_fifty_independent_rows()
    {
        var rows = ReferenceTable.Load("two-proportions").Where(row => row.Kind == "independent").ToList();
        foreach (var measure in ContrastMethods.Measures)
        {
            foreach (var method in ContrastMethods.Of(measure))
            {
                rows.Count(row => row.Text("measure") == measure.Name() && row.Text("method") == method.Name())
                    .Should().BeGreaterThanOrEqualTo(50, measure.Name() + " " + method.Name());
            }
        }
    }

    [Fact]
    public void Limits_lie_in_their_domain_and_around_the_value() => Gen.Select(Methods, Counts, Gen.Double[0.5, 0.9999]).Sample((m, counts, confidence) =>
    {
        var result = Contrasts.Of(m.Measure, m.Method, counts, confidence);
        var lowest = m.Measure == ContrastMeasure.Difference ? -1 : 0;
        var inside = (result.Lower is not { } lower || lower >= lowest) && (m.Measure != ContrastMeasure.Difference || result.Upper <= 1);
        return inside && (result.Value is not { } value || ((result.Lower is not { } low || low <= value) && (result.Upper is not { } high || value <= high)));
    });

    [Fact]
    public void Each_missing_number_has_its_reason_and_no_other_has_one() => Gen.Select(Methods, Counts).Sample((m, counts) =>
    {
        var result = Contrasts.Of(m.Measure, m.Method, counts);
        return result.Value is null == result.Reason is not null && result.Lower is null == result.LowerReason is not null
            && result.Upper is null == result.UpperReason is not null && result.IsDefined == result.Value is not null;
    });

    [Fact]
    public void Groups_that_change_places_turn_a_difference_round_and_a_ratio_upside_down() => Gen.Select(Methods, Counts).Sample((m, counts) =>
    {
        var swapped = new TwoProportions(counts.SecondSuccesses, counts.SecondTrials, counts.FirstSuccesses, counts.FirstTrials);
        return Turned(m.Measure, Contrasts.Of(m.Measure, m.Method, counts), Contrasts.Of(m.Measure, m.Method, swapped));
    });

    [Fact]
    public void Events_that_change_places_with_others_turn_a_difference_round_and_an_odds_ratio_upside_down() =>
        Gen.Select(Methods.Where(m => m.Measure != ContrastMeasure.Ratio), Counts).Sample((m, counts) =>
        {
            var turned = new TwoProportions(counts.FirstFailures, counts.FirstTrials, counts.SecondFailures, counts.SecondTrials);
            return Turned(m.Measure, Contrasts.Of(m.Measure, m.Method, counts), Contrasts.Of(m.Measure, m.Method, turned));
        });

    [Fact]
    public void More_confidence_is_never_narrower() => Gen.Select(Methods, Counts, Gen.Double[0.5, 0.9999], Gen.Double[0.5, 0.9999]).Sample((m, counts, one, other) =>
    {
        var narrow = Contrasts.Of(m.Measure, m.Method, counts, Math.Min(one, other));
        var wide = Contrasts.Of(m.Measure, m.Method, counts, Math.Max(one, other));
        return (wide.Lower is not { } low || low <= narrow.Lower + (1e-12 * (1 + Math.Abs(low))))
            && (wide.Upper is not { } high || high >= narrow.Upper - (1e-12 * (1 + Math.Abs(high))));
    });

    [Fact]
    public void The_corrected_and_the_scaled_interval_hold_the_plain_one() => Counts.Sample(counts =>
    {
        bool Holds(ContrastEstimate outer, ContrastEstimate inner) =>
            outer.Lower <= inner.Lower * (1 + (1e-11 * Math.Sign(inner.Lower!.Value))) + 1e-14 && (outer.Upper is null == inner.Upper is null)
            && (inner.Upper is not { } upper || outer.Upper >= upper - (1e-11 * Math.Abs(upper)) - 1e-14);
        return Holds(ProportionDifference.Of(ContrastMethod.NewcombeContinuity, counts), ProportionDifference.Of(ContrastMethod.Newcombe, counts))
            && Holds(ProportionRatio.Of(ContrastMethod.MiettinenNurminen, counts), ProportionRatio.Of(ContrastMethod.Koopman, counts));
    });

    [Fact]
    public void The_exact_odds_ratio_interval_leaves_out_one_just_where_a_tail_of_Fishers_test_is_below_half_the_level() =>
        Gen.Select(Counts, Gen.Double[0.5, 0.999]).Sample((c, confidence) =>
        {
            var result = OddsRatio.Of(ContrastMethod.ConditionalExact, c, confidence);
            var tail = (1 - confidence) / 2;
            var greater = FisherExact.Greater(c.FirstSuccesses, c.FirstTrials, c.SecondSuccesses, c.SecondTrials);
            var less = FisherExact.Less(c.FirstSuccesses, c.FirstTrials, c.SecondSuccesses, c.SecondTrials);
            return (Math.Abs(greater - tail) < 1e-9 || greater < tail == result.Lower > 1) && (Math.Abs(less - tail) < 1e-9 || less < tail == result.Upper < 1);
        });

    [Fact]
    public void The_limits_of_the_score_interval_of_a_ratio_of_one_and_of_a_difference_of_zero_agree() => Counts.Sample(counts =>
    {
        // Both are the same pooled test where the ratio is 1 and the difference 0.
        var difference = ProportionDifference.Of(ContrastMethod.MiettinenNurminen, counts);
        var ratio = ProportionRatio.Of(ContrastMethod.MiettinenNurminen, counts);
        var clear = Math.Min(Math.Abs(difference.Lower!.Value), Math.Abs(difference.Upper!.Value)) > 1e-9;
        return !clear || (difference.Lower > 0 == ratio.Lower > 1 && difference.Upper < 0 == ratio.Upper < 1);
    });

    [Fact]
    public void Square_and_add_of_Wilson_intervals_is_Newcombe()
    {
        var one = ScreenStats.Statistics.Proportions.ProportionInterval.Wilson(56, 70);
        var other = ScreenStats.Statistics.Proportions.ProportionInterval.Wilson(48, 80);
        var newcombe = ProportionDifference.Newcombe(56, 70, 48, 80).Interval!.Value;
        var added = ProportionDifference.SquareAndAdd(one.Estimate!.Value, one.Interval!.Value, other.Estimate!.Value, other.Interval!.Value);
        added.Lower.Should().BeApproximately(newcombe.Lower, 1e-15);
        added.Upper.Should().BeApproximately(newcombe.Upper, 1e-15);
        FluentActions.Invoking(() => ProportionDifference.SquareAndAdd(0.9, new Interval(0, 0.5), 0.1, new Interval(0, 1)))
            .Should().Throw<ArgumentOutOfRangeException>().WithParameterName("first");
        FluentActions.Invoking(() => ProportionDifference.SquareAndAdd(0.1, new Interval(0, 0.5), 0.1, new Interval(0.2, 1)))
            .Should().Throw<ArgumentOutOfRangeException>().WithParameterName("second");
    }

    [Fact]
    public void Each_named_method_is_the_method_of_its_name()
    {
        ProportionDifference.Newcombe(9, 10, 3, 10).Should().Be(Contrasts.Of("difference", "newcombe", new(9, 10, 3, 10)));
        ProportionDifference.NewcombeContinuity(9, 10, 3, 10).Should().Be(Contrasts.Of("difference", "newcombe-continuity", new(9, 10, 3, 10)));
        ProportionDifference.MiettinenNurminen(9, 10, 3, 10).Should().Be(Contrasts.Of("difference", "miettinen-nurminen", new(9, 10, 3, 10)));
        ProportionRatio.Katz(9, 10, 3, 10).Should().Be(Contrasts.Of("ratio", "katz", new(9, 10, 3, 10)));
        ProportionRatio.Koopman(9, 10, 3, 10).Should().Be(Contrasts.Of("ratio", "koopman", new(9, 10, 3, 10)));
        ProportionRatio.MiettinenNurminen(9, 10, 3, 10).Should().Be(Contrasts.Of("ratio", "miettinen-nurminen", new(9, 10, 3, 10)));
        OddsRatio.Woolf(9, 10, 3, 10).Should().Be(Contrasts.Of("odds-ratio", "woolf", new(9, 10, 3, 10)));
        OddsRatio.ConditionalExact(9, 10, 3, 10).Should().Be(Contrasts.Of("odds-ratio", "conditional-exact", new(9, 10, 3, 10)));
    }

    [Fact]
    public void A_ratio_to_a_group_without_events_has_a_lower_limit_only_and_says_why()
    {
        foreach (var result in new[] { ProportionRatio.Koopman(10, 10, 0, 20), ProportionRatio.MiettinenNurminen(10, 10, 0, 20) })
        {
            result.Value.Should().BeNull();
            result.Lower.Should().BeGreaterThan(6);
            result.Upper.Should().BeNull();
            result.Interval.Should().BeNull();
            result.Reason.Should().Be(UndefinedReason.NoEventsInSecondGroup);
            result.UpperReason.Should().Be(UndefinedReason.NoEventsInSecondGroup);
            result.ToEstimate().Should().Be(Estimate.Undefined(UndefinedReason.NoEventsInSecondGroup));
        }

        var odds = OddsRatio.ConditionalExact(10, 10, 0, 20);
        (odds.Value, odds.Reason, odds.UpperReason).Should().Be((null, UndefinedReason.OddsRatioUnbounded, UndefinedReason.OddsRatioUnbounded));
        odds.Lower.Should().BeGreaterThan(1);
        ProportionRatio.Katz(10, 10, 0, 20).LowerReason.Should().Be(UndefinedReason.NoStandardError);
        OddsRatio.Woolf(0, 10, 3, 20).Value.Should().Be(0);
        OddsRatio.Woolf(0, 10, 3, 20).LowerReason.Should().Be(UndefinedReason.NoStandardError);
    }

    [Fact]
    public void Groups_without_any_event_or_with_events_only_leave_every_ratio_open()
    {
        ProportionRatio.Koopman(0, 10, 0, 20).Should().Match<ContrastEstimate>(one =>
            one.Value == null && one.Lower == 0 && one.Upper == null && one.Reason == UndefinedReason.NoEventsInEitherGroup);
        OddsRatio.ConditionalExact(0, 10, 0, 20).Should().Match<ContrastEstimate>(one => one.Lower == 0 && one.UpperReason == UndefinedReason.NoEventsInEitherGroup);
        OddsRatio.ConditionalExact(10, 10, 20, 20).Should().Match<ContrastEstimate>(one => one.Lower == 0 && one.UpperReason == UndefinedReason.OnlyEventsInBothGroups);
        ProportionRatio.Katz(10, 10, 20, 20).Should().Match<ContrastEstimate>(one => one.Value == 1 && one.LowerReason == UndefinedReason.NoStandardError);
        ProportionRatio.Koopman(10, 10, 20, 20).Lower.Should().BeInRange(0.5, 1);
    }

    [Fact]
    public void Without_trials_in_a_group_everything_is_undefined_and_says_why()
    {
        foreach (var measure in ContrastMethods.Measures)
        {
            foreach (var method in ContrastMethods.Of(measure))
            {
                foreach (var counts in new TwoProportions[] { new(0, 0, 3, 9), new(3, 9, 0, 0), new(0, 0, 0, 0) })
                {
                    var result = Contrasts.Of(measure, method, counts);
                    (result.Reason, result.LowerReason, result.UpperReason).Should().Be((UndefinedReason.NoTrials, UndefinedReason.NoTrials, UndefinedReason.NoTrials));
                    result.ToEstimate().Should().Be(Estimate.Undefined(UndefinedReason.NoTrials));
                }
            }
        }
    }

    [Theory]
    [InlineData(5, 3, 1, 2, 0.95, "firstSuccesses")]
    [InlineData(-1, 3, 1, 2, 0.95, "firstSuccesses")]
    [InlineData(0, -1, 1, 2, 0.95, "firstTrials")]
    [InlineData(1, 3, 3, 2, 0.95, "secondSuccesses")]
    [InlineData(1, 3, 0, -2, 0.95, "secondTrials")]
    [InlineData(1, 3, 1, 2, 95, "confidence")]
    [InlineData(1, 3, 1, 2, double.NaN, "confidence")]
    public void Figures_that_cannot_be_are_refused_by_name(long x1, long n1, long x2, long n2, double confidence, string parameter)
    {
        foreach (var measure in ContrastMethods.Measures)
        {
            foreach (var method in ContrastMethods.Of(measure))
            {
                var call = () => Contrasts.Of(measure, method, new(x1, n1, x2, n2), confidence);
                call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(parameter);
            }
        }
    }

    [Fact]
    public void A_method_of_another_measure_is_refused()
    {
        FluentActions.Invoking(() => ProportionDifference.Of(ContrastMethod.Katz, new(1, 2, 1, 2))).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => ProportionRatio.Of(ContrastMethod.Woolf, new(1, 2, 1, 2))).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => OddsRatio.Of(ContrastMethod.Newcombe, new(1, 2, 1, 2))).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static bool Turned(ContrastMeasure measure, ContrastEstimate one, ContrastEstimate other) => measure == ContrastMeasure.Difference
        ? Math.Abs(one.Lower!.Value + other.Upper!.Value) < 1e-13 && Math.Abs(one.Upper!.Value + other.Lower!.Value) < 1e-13 && one.Value == -other.Value
        : Reciprocal(one.Lower, other.Upper) && Reciprocal(one.Upper, other.Lower) && Reciprocal(one.Value, other.Value);

    // An end at 0 answers one that is unbounded or that the method does not give.
    private static bool Reciprocal(double? one, double? other) => (one, other) switch
    {
        (null, null) => true,
        ({ } first, null) => first == 0,
        (null, { } second) => second == 0,
        ({ } first, { } second) => Math.Abs((first * second) - 1) < 1e-9,
    };
}
