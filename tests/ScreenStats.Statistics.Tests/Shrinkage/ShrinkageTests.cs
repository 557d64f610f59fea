using ScreenStats.Statistics.Shrinkage;
using ScreenStats.Statistics.Tests.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Shrinkage;

public sealed class ShrinkageTests
{
    private static readonly Gen<ObservedExpected[]> Groups = Gen.Select(Gen.Double[0.05, 60], Gen.Double[0, 3]).Select((expected, ratio) => new ObservedExpected((long)(expected * ratio * ratio), expected)).Array[2, 20];

    [Fact]
    public void Every_row_of_the_table_of_gamma_Poisson_fits_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("gamma-poisson"), row =>
    {
        var groups = Read(row);
        var fit = GammaPoisson.MaximumLikelihood(groups);
        var ratios = GammaPoisson.Ratios(groups, fit, row.Number("confidence"));
        return
        [
            row.Mismatch("shape", fit.Shape), row.Mismatch("rate", fit.Rate), row.Mismatch("mean", fit.Mean), row.Mismatch("log_likelihood", fit.LogLikelihood),
            .. Ratios(row, "first_ratios", count => ratios.Take(count).Select(ratio => ratio.Value)), .. Ratios(row, "last_ratios", count => ratios.TakeLast(count).Select(ratio => ratio.Value)),
            row.Mismatch("lower", ratios[0].Lower), row.Mismatch("upper", ratios[0].Upper),
        ];
    });

    [Fact]
    public void Every_row_of_the_table_of_ratios_by_moments_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("marshall-shrinkage"), row =>
    {
        var fit = MarshallShrinkage.Of(Read(row));
        return [row.Mismatch("mean", fit.Mean), row.Mismatch("variance", fit.Variance), .. Ratios(row, "first_ratios", count => fit.Ratios.Take(count).Select(ratio => (double?)ratio))];
    });

    [Fact]
    public void Every_row_of_the_table_of_normal_figures_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("normal-shrinkage"), row =>
    {
        var values = row.Numbers("values");
        var fit = NormalShrinkage.EfronMorris(values, row.Number("variance"));
        double Squares(IEnumerable<double> figures) => figures.Zip(row.Numbers("truth"), (figure, truth) => (figure - truth) * (figure - truth)).Sum();
        return
        [
            row.Mismatch("mean", fit.Mean), row.Mismatch("distance", fit.Distance), row.Mismatch("factor", fit.Factor), .. GroupRows.Mismatches(row, "estimates", fit.Estimates.Select(value => (double?)value)),
            row.Has("efficiency") ? row.Mismatch("efficiency", Squares(values) / Squares(fit.Estimates)) : null,
        ];
    });

    [Fact]
    public void Each_table_has_at_least_fifty_independent_rows()
    {
        foreach (var name in new[] { "gamma-poisson", "marshall-shrinkage", "normal-shrinkage" })
            ReferenceTable.Load(name).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, name);
    }

    [Fact]
    public void No_spread_near_the_fit_is_more_likely_and_ratios_lie_between_their_own_and_the_mean() => Groups.Sample(groups =>
    {
        var fit = GammaPoisson.MaximumLikelihood(groups);
        var turned = GammaPoisson.MaximumLikelihood([new(0, 0), .. groups.Reverse()]);
        (turned.Reason == fit.Reason && turned.Shape == fit.Shape && turned.LogLikelihood == fit.LogLikelihood).Should().BeTrue();
        if (fit.Shape is not { } shape) return;
        double Log(double a, double b) => groups.Sum(group =>
            Enumerable.Range(0, (int)group.Observed).Sum(j => Math.Log((a + j) / (j + 1))) + (a * Math.Log(b / (b + group.Expected))) + (group.Observed * Math.Log(group.Expected / (b + group.Expected))));
        var best = Log(shape, fit.Rate!.Value);
        best.Should().BeApproximately(fit.LogLikelihood!.Value, 1e-6 * Math.Abs(best));
        foreach (var factor in new[] { 0.98, 1.02 })
        {
            Log(shape * factor, fit.Rate.Value * factor).Should().BeLessThanOrEqualTo(best + 1e-9);
            Log(shape * factor, fit.Rate.Value).Should().BeLessThanOrEqualTo(best + 1e-9);
        }

        foreach (var (group, ratio) in groups.Zip(GammaPoisson.Ratios(groups, fit)))
        {
            var (low, high) = (Math.Min(group.Ratio!.Value, fit.Mean!.Value), Math.Max(group.Ratio.Value, fit.Mean.Value));
            ratio.Value.Should().BeInRange(low - 1e-9, high + 1e-9);
            (ratio.Lower < ratio.Value && ratio.Value < ratio.Upper).Should().BeTrue();
        }
    }, iter: 60);

    [Fact]
    public void What_cannot_be_drawn_together_says_why()
    {
        GammaPoisson.MaximumLikelihood([]).Reason.Should().Be(UndefinedReason.NoEventsExpected);
        GammaPoisson.MaximumLikelihood([new(3, 2)]).Reason.Should().Be(UndefinedReason.FewerThanTwoGroups);
        GammaPoisson.MaximumLikelihood([new(3, 2), new(1, 0), new(4, 4)]).Reason.Should().Be(UndefinedReason.NoEventsExpected);
        GammaPoisson.MaximumLikelihood([new(0, 2), new(0, 4)]).Reason.Should().Be(UndefinedReason.NoEvents);
        var alike = GammaPoisson.MaximumLikelihood([new(10, 10), new(20, 20), new(5, 5)]);
        (alike.Reason == UndefinedReason.GroupsAllAlike && alike.Mean == 1 && alike.LogLikelihood < 0).Should().BeTrue();
        GammaPoisson.Ratios([new(10, 10)], alike).Single().Reason.Should().Be(UndefinedReason.GroupsAllAlike);
        MarshallShrinkage.Of([new(3, 2)]).Reason.Should().Be(UndefinedReason.FewerThanTwoGroups);
        MarshallShrinkage.Of([new(10, 10), new(20, 20), new(0, 0)]).Ratios.Should().Equal(1, 1, 1);
        NormalShrinkage.EfronMorris([1, 2, 3], 1).Reason.Should().Be(UndefinedReason.FewerThanFourGroups);
        NormalShrinkage.EfronMorris([2, 2, 2, 2], 1).Estimates.Should().Equal(2, 2, 2, 2);
        FluentActions.Invoking(() => new ObservedExpected(-1, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new ObservedExpected(1, double.NaN)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => NormalShrinkage.EfronMorris([1, 2, 3, 4], 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => GammaPoisson.Ratios([], alike, 1)).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void A_site_without_events_or_without_expectation_has_a_ratio_above_zero()
    {
        ObservedExpected[] groups = [new(0, 5), new(0, 0), new(30, 10), new(4, 12), new(9, 9)];
        var ratios = GammaPoisson.Ratios(groups, GammaPoisson.MaximumLikelihood(groups));
        ratios[0].Value.Should().BeGreaterThan(0);
        ratios[1].Value!.Value.Should().BeApproximately(GammaPoisson.MaximumLikelihood(groups).Mean!.Value, 1e-12);
    }

    private static ObservedExpected[] Read(ReferenceRow row) => [.. row.Numbers("observed").Zip(row.Numbers("expected"), (observed, expected) => new ObservedExpected((long)observed, expected))];

    private static IEnumerable<string?> Ratios(ReferenceRow row, string column, Func<int, IEnumerable<double?>> some) => row.Has(column) ? GroupRows.Mismatches(row, column, some(row.Numbers(column).Count)) : [];
}
