using ScreenStats.Statistics.Economics.Uncertainty;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Tests.Economics.Uncertainty;

public sealed class UncertainFigureTests
{
    private const int Draws = 20_000;

    private static readonly (string Name, UncertainFigure Figure)[] Figures =
    [
        ("fixed", UncertainFigure.Fixed(3.25)), ("uniform", UncertainFigure.Uniform(-2, 5)), ("share", UncertainFigure.BetaByMoments(0.8, 0.05)),
        ("rare share", UncertainFigure.BetaByMoments(0.002, 0.0015)), ("cost", UncertainFigure.GammaByMoments(100, 20)), ("wide cost", UncertainFigure.GammaByMoments(100, 160)),
        ("ratio", UncertainFigure.LognormalByRange(0.5, 4)), ("counted share", UncertainFigure.Beta(new BetaDistribution(62, 37))),
    ];

    [Fact]
    public void Every_row_of_the_figures_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("uncertain-figures"), row =>
    {
        var figure = Figure(row);
        return new[]
        {
            row.Mismatch("first_parameter", figure.First), row.Mismatch("second_parameter", figure.Second), row.Mismatch("mean", figure.Mean),
            row.Mismatch("deviation", figure.StandardDeviation), row.Mismatch("q025", figure.QuantileAt(0.025)), row.Mismatch("q500", figure.QuantileAt(0.5)),
            row.Mismatch("q975", figure.QuantileAt(0.975)),
        };
    });

    [Fact]
    public void Every_row_of_the_shares_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("uncertain-shares"), row =>
        row.Differences("weights", [.. UncertainShares.ByMoments(row.Numbers("means"), row.Numbers("deviations")).Weights.Select(weight => (double?)weight)]));

    [Fact]
    public void Draws_have_the_mean_deviation_and_quantiles_of_the_figure()
    {
        foreach (var (name, figure) in Figures)
        {
            double[] sorted = [.. ParameterDraws.Of(figure, name, Draws, 7).Order()];
            var mean = sorted.Average();

            // Five standard errors, computed here; the seed is fixed.
            mean.Should().BeApproximately(figure.Mean, (5 * figure.StandardDeviation / Math.Sqrt(Draws)) + 1e-12, name);
            foreach (var probability in new[] { 0.025, 0.2, 0.5, 0.8, 0.975 })
            {
                var below = sorted.Count(value => value <= figure.QuantileAt(probability)) / (double)Draws;
                if (!figure.IsFixed) below.Should().BeApproximately(probability, 5 * Math.Sqrt(probability * (1 - probability) / Draws), name);
            }
        }
    }

    [Fact]
    public void A_draw_depends_on_seed_name_and_number_alone()
    {
        var cost = UncertainFigure.GammaByMoments(100, 20);
        var some = ParameterDraws.Of(cost, "kit", 50, 7);
        ParameterDraws.Of(cost, "kit", 200, 7).Take(50).Should().Equal(some, "more draws leave the first as they were");
        ParameterDraws.Of(cost, "kit", 50, 8).Should().NotEqual(some);
        ParameterDraws.Of(cost, "test", 50, 7).Should().NotEqual(some);
        ParameterDraws.Of(cost, "tik", 50, 7).Should().NotEqual(some, "the order of the letters counts");
        var (first, second) = (ParameterDraws.Of(cost, "a", Draws, 7), ParameterDraws.Of(cost, "b", Draws, 7));
        var correlation = first.Zip(second, (a, b) => (a - 100) * (b - 100)).Average() / 400;
        correlation.Should().BeApproximately(0, 5 / Math.Sqrt(Draws), "streams of two parameters are independent");
    }

    [Fact]
    public void The_first_draws_stay_what_they_were()
    {
        // SplitMix64 and the hash of the name written anew in Python: a changed generator would change every report.
        ParameterDraws.Of(UncertainFigure.Uniform(0, 1), "kit", 2, 1).Should().Equal(0.6218110836129427, 0.913387717207905);
        ParameterDraws.Of(UncertainFigure.Fixed(3), "kit", 3, 1).Should().Equal(3, 3, 3);
    }

    [Fact]
    public void Shares_add_up_and_each_has_its_beta_distribution()
    {
        var shares = UncertainShares.Of([2, 5, 13]);
        var drawn = ParameterDraws.Of(shares, "course", Draws, 7);
        for (var draw = 0; draw < Draws; draw++) drawn.Sum(share => share[draw]).Should().BeApproximately(1, 1e-12);
        for (var share = 0; share < 3; share++)
        {
            var figure = shares.Share(share);
            drawn[share].Average().Should().BeApproximately(figure.Mean, 5 * figure.StandardDeviation / Math.Sqrt(Draws));
            var below = drawn[share].Count(value => value <= figure.QuantileAt(0.2)) / (double)Draws;
            below.Should().BeApproximately(0.2, 5 * Math.Sqrt(0.16 / Draws));
        }
    }

    [Fact]
    public void A_matched_distribution_has_the_moments_it_was_matched_to() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.95], Gen.Double[1e-3, 1e6], Gen.Double[0.001, 3]).Sample((share, part, mean, ratio) =>
        {
            var deviation = part * Math.Sqrt(share * (1 - share));
            var beta = UncertainFigure.Beta(new BetaDistribution(UncertainFigure.BetaByMoments(share, deviation).First, UncertainFigure.BetaByMoments(share, deviation).Second));
            var gamma = UncertainFigure.GammaByMoments(mean, ratio * mean);
            var log = UncertainFigure.LognormalByMoments(mean, ratio * mean);
            var logMean = Math.Exp(log.First + (log.Second * log.Second / 2));
            return Close(beta.Mean, share) && Close(beta.StandardDeviation, deviation)
                && Close(gamma.First * gamma.Second, mean) && Close(Math.Sqrt(gamma.First) * gamma.Second, ratio * mean)
                && Close(logMean, mean) && Close(logMean * Math.Sqrt(Math.Exp(log.Second * log.Second) - 1), ratio * mean);
        });

    [Fact]
    public void Quantiles_rise_and_ranges_hold_their_probability() => Gen.Select(Gen.Int[0, Figures.Length - 1], Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.999]).Sample((which, first, second) =>
    {
        var figure = Figures[which].Figure;
        var range = figure.Range(first);
        return figure.QuantileAt(Math.Min(first, second)) <= figure.QuantileAt(Math.Max(first, second)) && range.Lower <= figure.QuantileAt(0.5) && figure.QuantileAt(0.5) <= range.Upper;
    });

    [Fact]
    public void A_range_without_width_is_a_fixed_figure()
    {
        UncertainFigure.BetaByRange(0.4, 0.4, 0.4).Should().Be(UncertainFigure.Fixed(0.4));
        UncertainFigure.GammaByRange(5, 5, 5).Should().Be(UncertainFigure.Fixed(5));
        UncertainFigure.LognormalByRange(5, 5).Should().Be(UncertainFigure.Fixed(5));
        UncertainFigure.Uniform(5, 5).Should().Be(UncertainFigure.Fixed(5));
        UncertainFigure.LognormalByMoments(0, 0).Should().Be(UncertainFigure.Fixed(0));
        UncertainFigure.Fixed(2).Range().Should().Be(new Interval(2, 2));
    }

    [Fact]
    public void A_cost_by_its_range_leaves_as_much_beyond_both_ends() => Gen.Select(Gen.Double[-6, 9], Gen.Double[1e-4, 13], Gen.Double[0, 1], Gen.Double[0.5, 0.99]).Sample((logarithm, distance, place, confidence) =>
    {
        var (lower, upper) = (Math.Pow(10, logarithm), Math.Pow(10, logarithm) * Math.Exp(distance));
        var figure = UncertainFigure.GammaByRange(Math.Min(upper, lower + (place * (upper - lower))), lower, upper, confidence);
        var range = figure.Range(confidence);
        return Math.Abs(range.Lower - lower) <= 1e-8 * lower && Math.Abs(range.Upper - upper) <= 1e-8 * upper;
    });

    [Fact]
    public void A_cost_that_may_be_nothing_has_its_value_as_the_mean_and_meets_the_upper_end()
    {
        foreach (var upper in (double[])[1.05, 2, 5, 7])
        {
            var figure = UncertainFigure.GammaByRange(100, 0, 100 * upper);
            figure.Mean.Should().Be(100);
            figure.QuantileAt(0.975).Should().BeApproximately(100 * upper, 1e-8);
        }

        UncertainFigure.GammaByRange(100, 0, 2000).StandardDeviation.Should().BeApproximately(2000 / 3.919927969, 1e-6, "no gamma distribution has so far an end");
        UncertainFigure.GammaByRange(100, 0, 100).StandardDeviation.Should().BeApproximately(100 / 3.919927969, 1e-6, "nor one at its mean");
    }

    [Fact]
    public void A_share_by_its_range_is_the_matching_beta_distribution()
    {
        var matched = BetaDistribution.Matching(0.73, 0.65, 0.8);
        var figure = UncertainFigure.BetaByRange(0.73, 0.65, 0.8);
        (figure.First, figure.Second).Should().Be((matched.Alpha, matched.Beta));
        figure.Range().Width.Should().BeApproximately(0.15, 1e-9);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => UncertainFigure.Fixed(double.NaN), "value"), (() => UncertainFigure.Uniform(2, 1), "upper"), (() => UncertainFigure.BetaByMoments(1.2, 0.1), "mean"),
            (() => UncertainFigure.BetaByMoments(0.5, 0.5), "standardDeviation"), (() => UncertainFigure.BetaByMoments(0, 0.1), "standardDeviation"),
            (() => UncertainFigure.GammaByMoments(-1, 1), "mean"), (() => UncertainFigure.GammaByMoments(0, 1), "standardDeviation"), (() => UncertainFigure.GammaByRange(5, 6, 7), "value"),
            (() => UncertainFigure.GammaByRange(5, 7, 6), "upper"), (() => UncertainFigure.GammaByRange(0, 0, 6), "upper"), (() => UncertainFigure.LognormalByMoments(1, double.NaN), "standardDeviation"),
            (() => UncertainFigure.LognormalByRange(0, 1), "lower"), (() => UncertainFigure.LognormalByRange(2, 1), "upper"), (() => UncertainFigure.LognormalByRange(1, 2, 1), "confidence"),
            (() => UncertainFigure.Fixed(1).QuantileAt(0), "probability"), (() => UncertainFigure.Fixed(1).Range(1), "confidence"), (() => UncertainFigure.Beta(default), "alpha"),
            (() => UncertainShares.Of([1, 0]), "weights"), (() => UncertainShares.ByMoments([0.5, 0.6], [0.1, 0.1]), "means"),
            (() => UncertainShares.ByMoments([0.5, 0.5], [0.6, 0.6]), "standardDeviations"), (() => UncertainShares.ByMoments([0.5, 0.5], [0, 0.1]), "standardDeviations"),
            (() => UncertainShares.Of([1, 2]).Share(2), "index"), (() => ParameterDraws.Of(UncertainFigure.Fixed(1), "x", 0, 1), "draws"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
        FluentActions.Invoking(() => UncertainShares.Of([1])).Should().Throw<ArgumentException>().WithParameterName("weights");
        FluentActions.Invoking(() => ParameterDraws.Of(UncertainFigure.Fixed(1), string.Empty, 1, 1)).Should().Throw<ArgumentException>().WithParameterName("name");
    }

    internal static UncertainFigure Moments(string family, double mean, double deviation) => family switch
    {
        "beta" => UncertainFigure.BetaByMoments(mean, deviation),
        "gamma" => UncertainFigure.GammaByMoments(mean, deviation),
        "lognormal" => UncertainFigure.LognormalByMoments(mean, deviation),
        _ => throw new ArgumentException("Not a family of the table.", nameof(family)),
    };

    private static UncertainFigure Figure(ReferenceRow row) => (row.Text("family"), row.Text("by")) switch
    {
        (var family, "moments") => Moments(family, row.Number("value"), row.Number("second")),
        ("gamma", _) => UncertainFigure.GammaByRange(row.Number("value"), row.Number("lower"), row.Number("upper"), row.Number("second")),
        ("lognormal", _) => UncertainFigure.LognormalByRange(row.Number("lower"), row.Number("upper"), row.Number("second")),
        _ => UncertainFigure.Uniform(row.Number("lower"), row.Number("upper")),
    };

    private static bool Close(double actual, double expected) => Math.Abs(actual - expected) <= 1e-9 * Math.Abs(expected);
}
