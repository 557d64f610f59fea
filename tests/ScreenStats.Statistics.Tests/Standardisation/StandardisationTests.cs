using System.Globalization;
using ScreenStats.Statistics.Standardisation;

namespace ScreenStats.Statistics.Tests.Standardisation;

public sealed class StandardisationTests
{
    private static readonly Dictionary<string, DirectMethod> Methods = new()
    {
        ["fay-feuer"] = DirectMethod.FayFeuer, ["tiwari"] = DirectMethod.Tiwari, ["dobson-exact"] = DirectMethod.DobsonExact, ["dobson-byar"] = DirectMethod.DobsonByar, ["normal"] = DirectMethod.Normal,
    };

    private static readonly Gen<StandardStratum[]> Strata = Gen.Select(Gen.Long[0, 50], Gen.Double[1, 5000], Gen.Double[1, 900]).Select((x, n, s) => new StandardStratum(x, n + x, s)).Array[1, 8];

    [Fact]
    public void Every_row_of_the_table_of_Poisson_limits_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("poisson-intervals"), row =>
    {
        var limits = row.Text("method") == "exact" ? PoissonInterval.Exact(row.Count("events"), row.Number("confidence")) : PoissonInterval.Byar(row.Count("events"), row.Number("confidence"));
        return [row.Mismatch("lower", limits.Lower), row.Mismatch("upper", limits.Upper)];
    });

    [Fact]
    public void Every_row_of_the_table_of_direct_rates_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("direct-rates"), row =>
    {
        StandardStratum[] strata = [.. Parts(row).Select(part => new StandardStratum((long)part[0], part[1], part[2]))];
        var result = DirectStandardisation.Of(strata, Methods[row.Text("method")], row.Number("confidence"));
        var per = row.Number("per");
        return [row.Mismatch("crude", per * result.CrudeRate), row.Mismatch("rate", per * result.Rate.Value), row.Mismatch("lower", per * result.Rate.Lower), row.Mismatch("upper", per * result.Rate.Upper)];
    });

    [Fact]
    public void Every_row_of_the_table_of_indirect_ratios_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("indirect-ratios"), row =>
    {
        ReferenceStratum[] strata = [.. Parts(row).Select(part => new ReferenceStratum((long)part[0], part[1], (long)part[2], part[3]))];
        var result = IndirectStandardisation.Of(strata, row.Text("method") == "exact" ? IndirectMethod.Exact : IndirectMethod.Byar, row.Number("confidence"));
        return
        [
            row.Mismatch("expected", result.Expected), row.Mismatch("ratio", result.Ratio.Value), row.Mismatch("lower", result.Ratio.Lower), row.Mismatch("upper", result.Ratio.Upper),
            row.Mismatch("rate", row.Number("per") * result.Rate.Value),
        ];
    });

    [Fact]
    public void Each_table_has_at_least_fifty_independent_rows()
    {
        foreach (var name in new[] { "poisson-intervals", "direct-rates", "indirect-ratios" })
            ReferenceTable.Load(name).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, name);
    }

    [Fact]
    public void The_site_itself_as_standard_gives_its_crude_rate_with_Poisson_limits() => Strata.Sample(strata =>
    {
        StandardStratum[] own = [.. strata.Select(s => new StandardStratum(s.Events, s.Population, s.Population))];
        var result = DirectStandardisation.Of(own);
        var exact = PoissonInterval.Exact(result.Events);
        return Math.Abs(result.Rate.Value!.Value - result.CrudeRate!.Value) < 1e-12 && Math.Abs((result.Rate.Upper!.Value * result.Population) - exact.Upper) < 1e-7 * (1 + exact.Upper)
            && Math.Abs((result.Rate.Lower!.Value * result.Population) - exact.Lower) < 1e-7 * (1 + exact.Lower);
    }, iter: 100);

    [Fact]
    public void Order_and_the_unit_of_the_standard_change_nothing_and_limits_enclose_the_rate() => Strata.Sample(strata =>
    {
        foreach (var method in Methods.Values)
        {
            var result = DirectStandardisation.Of(strata, method);
            var turned = DirectStandardisation.Of([.. strata.Reverse().Select(s => new StandardStratum(s.Events, s.Population, 8 * s.Standard)), new StandardStratum(3, 10, 0)], method);
            if (result.Rate.Value is not { } rate)
            {
                (turned.Rate.Reason == result.Rate.Reason && result.Rate.Reason == UndefinedReason.NoEvents).Should().BeTrue();
                continue;
            }

            turned.Rate.Should().Be(result.Rate);
            result.Rate.Interval!.Value.Contains(rate).Should().BeTrue();
            result.Rate.Lower.Should().BeGreaterThanOrEqualTo(0);
        }
    }, iter: 100);

    [Fact]
    public void The_whole_population_against_itself_is_as_expected() => Strata.Sample(strata =>
    {
        var result = IndirectStandardisation.Of([.. strata.Select(s => new ReferenceStratum(s.Events, s.Population, s.Events, s.Population))]);
        return result.Observed == 0 ? result.Ratio.Reason == UndefinedReason.NoEventsExpected : Math.Abs(result.Ratio.Value!.Value - 1) < 1e-12;
    }, iter: 100);

    [Fact]
    public void Exact_limits_leave_half_of_the_error_on_each_side() => Gen.Long[1, 60].Sample(events =>
    {
        var limits = PoissonInterval.Exact(events);
        double Cumulative(double mean, long most)
        {
            double sum = 0, term = Math.Exp(-mean);
            for (long k = 0; k <= most; k++)
            {
                sum += term;
                term *= mean / (k + 1);
            }

            return sum;
        }

        return Math.Abs(Cumulative(limits.Upper, events) - 0.025) < 1e-10 && Math.Abs(1 - Cumulative(limits.Lower, events - 1) - 0.025) < 1e-10;
    }, iter: 60);

    [Fact]
    public void What_cannot_be_standardised_says_why()
    {
        DirectStandardisation.Of([]).Rate.Reason.Should().Be(UndefinedReason.NoStandardPopulation);
        DirectStandardisation.Of([new(1, 10, 5), new(0, 0, 5)]).Rate.Reason.Should().Be(UndefinedReason.StratumWithoutTrials);
        DirectStandardisation.Of([new(0, 0, 5)]).Rate.Reason.Should().Be(UndefinedReason.NoTrials);
        DirectStandardisation.Of([new(0, 10, 5)], DirectMethod.Normal).Rate.Reason.Should().Be(UndefinedReason.NoEvents);
        var none = DirectStandardisation.Of([new(0, 10, 5)]);
        none.Rate.Lower.Should().Be(0);
        none.Rate.Upper!.Value.Should().BeApproximately(-Math.Log(0.025) / 10, 1e-12);
        none.FewEvents.Should().BeTrue();
        IndirectStandardisation.Of([new(0, 0, 3, 10)]).Ratio.Reason.Should().Be(UndefinedReason.NoTrials);
        IndirectStandardisation.Of([new(1, 5, 0, 0)]).Ratio.Reason.Should().Be(UndefinedReason.StratumWithoutReference);
        IndirectStandardisation.Of([new(1, 5, 0, 10)]).Ratio.Reason.Should().Be(UndefinedReason.NoEventsExpected);
        FluentActions.Invoking(() => new StandardStratum(1, 0, 3)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new ReferenceStratum(0, 3, 1, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PoissonInterval.Exact(-1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PoissonInterval.Byar(1, 0)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static IEnumerable<double[]> Parts(ReferenceRow row) =>
        row.Text("strata").Split(' ').Select(stratum => stratum.Split('/', ':').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray());
}
