using ScreenStats.Statistics.Economics.Frontier;
using ScreenStats.Statistics.Economics.Uncertainty;
using ScreenStats.Statistics.Economics.Uncertainty.Acceptability;
using ScreenStats.Statistics.Economics.Uncertainty.Information;
using ScreenStats.Statistics.Economics.Uncertainty.Ratios;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Tests.Economics.Uncertainty;

public sealed class InformationTests
{
    private static readonly Gen<(double[][] Costs, double[][] Effects)> Drawn = Gen.Int[1, 6].SelectMany(options => Gen.Int[1, 40].SelectMany(draws =>
        Gen.Select(Gen.Double[-1e3, 1e4].Array[draws].Array[options], Gen.Double[-10, 50].Array[draws].Array[options])));

    [Fact]
    public void Every_row_of_perfect_information_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("perfect-information"), row =>
    {
        var table = NetBenefitTable.Of(row.Rows("benefits"), row.Has("weights") ? row.Numbers("weights") : null);
        var found = PerfectInformation.OfEverything(table);
        return
        [
            row.Mismatch("best", found.Best), row.Mismatch("now", found.ExpectedNow), row.Mismatch("knowing", found.ExpectedKnowing), row.Mismatch("value", found.Value),
            .. row.Differences("losses", [.. PerfectInformation.Losses(table).Select(loss => (double?)loss)]),
        ];
    });

    [Fact]
    public void Every_row_of_acceptability_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("acceptability"), row =>
    {
        var options = row.Rows("costs").Zip(row.Rows("effects"), (costs, effects) => new OptionDraws(costs, effects)).ToArray();
        var point = AcceptabilityCurve.Of(options, [row.Number("value")]).Single();
        return
        [
            .. row.Differences("chances", [.. point.Chances.Select(chance => (double?)chance)]),
            .. row.Differences("means", [.. point.MeanNetBenefits.Select(mean => (double?)mean)]),
            row.Mismatch("best", point.Best), row.Mismatch("chance_of_best", point.ChanceOfBest),
        ];
    });

    [Fact]
    public void Every_row_of_shares_and_samples_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("share-information"), row =>
    {
        var known = new BetaDistribution(row.Number("alpha"), row.Number("beta"));
        var options = row.Pairs("options").Select(pair => new LinearBenefit(pair.First, pair.Second)).ToArray();
        var sample = ShareInformation.OfSample(known, options, row.Count("sample"));
        return new[]
        {
            row.Mismatch("now", sample.ExpectedNow), row.Mismatch("of_sample", sample.Value), row.Mismatch("of_perfect", ShareInformation.OfPerfect(known, options).Value),
        };
    });

    [Fact]
    public void Every_row_of_the_ratios_of_draws_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("drawn-ratios"), row =>
    {
        var draws = new OptionDraws(row.Numbers("costs"), row.Numbers("effects"));
        var found = DrawnRatio.Of(draws, row.Number("confidence"));
        return new[]
        {
            row.Mismatch("value", found.Value), row.Mismatch("lower", found.Lower), row.Mismatch("upper", found.Upper), row.Mismatch("without", DrawnRatio.ShareWithoutEffect(draws)),
        };
    });

    [Fact]
    public void A_ratio_without_an_effect_has_a_reason()
    {
        DrawnRatio.Of(new OptionDraws([1], [0])).Reason.Should().Be(UndefinedReason.NoEffect);
        DrawnRatio.Of(new OptionDraws([1], [-1])).Reason.Should().Be(UndefinedReason.DoesHarm);
        DrawnRatio.Of(new OptionDraws([1, 1, 1], [-1, -1, 9]), 0.2).Reason.Should().Be(UndefinedReason.MayDoNothing);
        FluentActions.Invoking(() => DrawnRatio.Of(new OptionDraws([1], [1]), 1)).Should().Throw<ArgumentOutOfRangeException>().WithParameterName("confidence");
    }

    [Fact]
    public void The_value_of_one_parameter_agrees_with_its_integral_within_the_error_of_the_draws()
    {
        const int Draws = 20_000;
        foreach (var row in ReferenceTable.Load("parameter-information"))
        {
            var first = UncertainFigureTests.Moments(row.Text("first_family"), row.Number("first_mean"), row.Number("first_deviation"));
            var second = UncertainFigureTests.Moments(row.Text("second_family"), row.Number("second_mean"), row.Number("second_deviation"));
            var (x, y) = (ParameterDraws.Of(first, "first", Draws, 11), ParameterDraws.Of(second, "second", Draws, 11));
            var (constant, a, b) = (row.Number("constant"), row.Number("first_slope"), row.Number("second_slope"));
            Func<double, double, double> net = row.Id.Split('-')[0] switch
            {
                "product" => (u, v) => constant + (a * u * v),
                "hump" => (u, v) => constant + (a * (u - first.Mean) * (u - first.Mean)) + (b * v),
                _ => (u, v) => constant + (a * u) + (b * v),
            };
            var screening = x.Zip(y, net).ToArray();
            var table = NetBenefitTable.Of([new double[Draws], screening]);
            foreach (var (parameter, column) in new[] { (x, "of_first"), (y, "of_second") })
            {
                var found = PerfectInformation.OfParameter(table, parameter);
                var expected = row.Number(column);

                // Five standard errors, and what a spline of eight columns makes of the noise: at most its deviation times root(8/n), where the choice hangs in the balance.
                var room = (5 * found.StandardError.GetValueOrDefault()) + 0.1;
                Math.Abs(found.Value - expected).Should().BeLessThan(room, $"{row} {column}: {found.Value} against {expected}");
            }
        }
    }

    [Fact]
    public void Information_is_never_worth_less_than_nothing_nor_one_parameter_more_than_all() => Gen.Select(Drawn, Gen.Double[0, 1e3], Gen.Int[1, 30]).Sample((drawn, value, groups) =>
    {
        var table = NetBenefitTable.Of(Options(drawn), value);
        var everything = PerfectInformation.OfEverything(table);
        double[] smooth = drawn.Costs[0], coarse = [.. Enumerable.Range(0, table.Draws).Select(draw => (double)(draw % groups))];
        return everything.Value >= 0 && PerfectInformation.Losses(table).All(loss => loss >= 0) && !(everything.StandardError < 0)
            && new[] { smooth, coarse }.Select(parameter => PerfectInformation.OfParameter(table, parameter).Value).All(part => part >= 0 && part <= everything.Value);
    });

    [Fact]
    public void Chances_add_up_to_one_and_the_best_has_the_highest_mean() => Gen.Select(Drawn, Gen.Double[0, 1e3].Array[1, 5]).Sample((drawn, values) =>
        AcceptabilityCurve.Of(Options(drawn), values).All(point => Math.Abs(point.Chances.Sum() - 1) < 1e-12 && point.Chances.All(chance => chance is >= 0 and <= 1 + 1e-15)
            && point.MeanNetBenefits.All(mean => mean <= point.MeanNetBenefits[point.Best]) && point.ChanceOfBest == point.Chances[point.Best]));

    [Fact]
    public void Without_uncertainty_the_draws_give_exactly_the_figures() =>
        Gen.Select(Gen.Double[-1e6, 1e6].Array[3], Gen.Double[-1e3, 1e3].Array[3], Gen.Double[0, 1e4], Gen.Int[1, 700]).Sample((costs, effects, value, draws) =>
        {
            OptionDraws[] options =
            [
                .. costs.Zip(effects, (cost, effect) => new OptionDraws(
                    ParameterDraws.Of(UncertainFigure.Fixed(cost), "cost", draws, 3), ParameterDraws.Of(UncertainFigure.Fixed(effect), "effect", draws, 3))),
            ];
            OptionOutcome[] outcomes = [.. costs.Zip(effects, (cost, effect) => new OptionOutcome(cost, effect))];
            var table = NetBenefitTable.Of(options, value);
            var found = PerfectInformation.OfEverything(table);
            var best = NetBenefit.Best(outcomes, value);
            return options.Zip(outcomes).All(pair => pair.First.Mean == pair.Second)
                && table.Means.Zip(outcomes).All(pair => pair.First == NetBenefit.Of(pair.Second, value))
                && best.Contains(found.Best) && found.Value == 0 && found.StandardError is null or 0
                && PerfectInformation.OfParameter(table, options[0].Costs).Value == 0
                && AcceptabilityCurve.Of(options, [value])[0].ChanceOfBest == 1;
        });

    [Fact]
    public void Of_options_that_are_equal_in_a_draw_the_first_is_counted()
    {
        OptionDraws[] options = [new([3, 2], [1, 1]), new([2, 2], [0, 1]), new([2, 2], [0, 1])];
        var point = AcceptabilityCurve.Of(options, [1]).Single();
        point.Chances.Should().Equal(1, 0, 0);
        point.Best.Should().Be(0);
    }

    [Fact]
    public void A_parameter_that_decides_everything_is_worth_everything_and_one_that_does_not_matter_next_to_nothing()
    {
        const int Draws = 5000;
        var gain = ParameterDraws.Of(UncertainFigure.Uniform(-1, 1), "gain", Draws, 5);
        var other = ParameterDraws.Of(UncertainFigure.GammaByMoments(3, 2), "other", Draws, 5);
        var table = NetBenefitTable.Of([new double[Draws], gain]);
        var everything = PerfectInformation.OfEverything(table);
        everything.Value.Should().BeApproximately(0.25, 5 * everything.StandardError!.Value, "the integral of x above 0, over a length of 2");
        PerfectInformation.OfParameter(table, gain).Value.Should().BeApproximately(everything.Value, 1e-9, "a straight line is met exactly");
        PerfectInformation.OfParameter(table, other).Value.Should().BeLessThan(0.02);
        PerfectInformation.OfParameter(table, gain).Method.Should().Be(PerfectInformation.RegressionMethod);
        var sides = PerfectInformation.OfParameter(table, [.. gain.Select(value => value > 0 ? 1.0 : 0)]);
        sides.Value.Should().BeApproximately(everything.Value, 1e-12, "the side alone decides");
        sides.Method.Should().Be(PerfectInformation.GroupMethod);
    }

    [Fact]
    public void Every_row_of_the_best_samples_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("best-samples"), row =>
    {
        var options = row.Pairs("options").Select(pair => new LinearBenefit(pair.First, pair.Second)).ToArray();
        var best = ShareInformation.Best(new(row.Number("alpha"), row.Number("beta")), options, row.Number("each"), row.Number("fixed"), (int)row.Count("largest"));
        return new[] { row.Mismatch("sample", best.Sample), row.Mismatch("worth", best.Worth.Value), row.Mismatch("net", best.Net) };
    });

    [Fact]
    public void A_larger_sample_is_worth_no_less_and_never_as_much_as_knowing() =>
        Gen.Select(Gen.Double[0.2, 60], Gen.Double[0.2, 60], Gen.Double[-500, 500], Gen.Double[-500, 500], Gen.Int[0, 200], Gen.Int[1, 200]).Sample((a, b, zero, one, sample, more) =>
        {
            var known = new BetaDistribution(a, b);
            LinearBenefit[] options = [new(0, 0), new(zero, one)];
            var (few, many, all) = (ShareInformation.OfSample(known, options, sample).Value, ShareInformation.OfSample(known, options, sample + more).Value, ShareInformation.OfPerfect(known, options).Value);
            return few >= 0 && few <= many + 1e-9 && many <= all + 1e-9;
        });

    [Fact]
    public void A_sample_without_end_is_worth_what_knowing_is()
    {
        var known = new BetaDistribution(1.5, 30);
        LinearBenefit[] options = [new(0, 0), new(-40, 900), new(-90, 1600)];
        ShareInformation.OfSample(known, options, ShareInformation.LargestSample).Value.Should().BeApproximately(ShareInformation.OfPerfect(known, options).Value, 1e-3);
        ShareInformation.OfSample(new BetaDistribution(0.3, 0.4), options, 100_000).Value.Should().BeApproximately(ShareInformation.OfPerfect(new BetaDistribution(0.3, 0.4), options).Value, 0.01);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var table = NetBenefitTable.Of([[1, 2], [2, 1]]);
        var weighted = NetBenefitTable.Of([[1, 2], [2, 1]], [1, 3]);
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new OptionDraws([1, double.NaN], [1, 2]), "costs"), (() => _ = new OptionDraws([1], [double.PositiveInfinity]), "effects"),
            (() => _ = new OptionDraws([], []), "costs"), (() => _ = new OptionDraws([1], []), "effects"), (() => NetBenefitTable.Of([[1, double.NaN]]), "netBenefits"),
            (() => NetBenefitTable.Of([[1, 2], [1]]), "netBenefits"), (() => NetBenefitTable.Of([[1, 2]], [0, 0]), "weights"), (() => NetBenefitTable.Of([[1, 2]], [1]), "weights"),
            (() => NetBenefitTable.Of([[1, 2]], [1, -1]), "weights"), (() => NetBenefitTable.Of([new OptionDraws([1], [1])], -1), "valueOfEffect"),
            (() => PerfectInformation.OfParameter(table, [1]), "parameter"), (() => PerfectInformation.OfParameter(table, [1, double.NaN]), "parameter"),
            (() => PerfectInformation.OfParameter(weighted, [1, 2]), "table"), (() => _ = new LinearBenefit(double.NaN, 1), "atZero"),
            (() => ShareInformation.OfSample(new(1, 1), [new(1, 1)], -1), "sample"), (() => ShareInformation.OfSample(new(1, 1), [], 1), "options"),
            (() => ShareInformation.Best(new(1, 1), [new(1, 1)], -1, 0, 1), "costOfEach"),
            (() => ShareInformation.Best(new(1, 1), [new(1, 1)], 1, double.NaN, 1), "fixedCost"), (() => ShareInformation.Best(new(1, 1), [new(1, 1)], 1, 1, 20_000), "largest"),
            (() => ShareInformation.OfPerfect(default, [new(1, 1)]), "alpha"), (() => AcceptabilityCurve.Of([new OptionDraws([1], [1])], [1])[0].StandardError(1), "option"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentException>().WithParameterName(name);
    }

    private static OptionDraws[] Options((double[][] Costs, double[][] Effects) drawn) => [.. drawn.Costs.Zip(drawn.Effects, (costs, effects) => new OptionDraws(costs, effects))];
}
