using ScreenStats.Statistics.Funnels;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Tests.Heterogeneity;

namespace ScreenStats.Statistics.Tests.Funnels;

public sealed class FunnelTests
{
    [Fact]
    public void Every_row_of_the_table_of_limits_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("funnel-limits"), row =>
        [row.Mismatch("limit", FunnelLimits.Exact(row.Number("target"), row.Count("trials"), row.Number("probability")))]);

    [Fact]
    public void Every_row_of_the_table_of_funnels_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("funnels"), row =>
    {
        var options = new FunnelOptions
        {
            Target = row.Has("target") ? row.Number("target") : null,
            Scale = row.Text("scale") == "proportion" ? FunnelScale.Proportion : FunnelScale.ArcsineRoot,
            Winsorised = row.Number("winsorised"),
        };
        var funnel = FunnelPlot.Of(GroupRows.Read(row), options);
        return
        [
            row.Mismatch("centre", funnel.Target), row.Mismatch("overdispersion", funnel.Overdispersion), row.Mismatch("winsorised_overdispersion", funnel.WinsorisedOverdispersion),
            row.Mismatch("between_variance", funnel.BetweenVariance),
            row.Mismatch("multiplicative_lower", funnel.LimitsAt(148, 0.95, FunnelModel.Multiplicative)?.Lower), row.Mismatch("multiplicative_upper", funnel.LimitsAt(148, 0.95, FunnelModel.Multiplicative)?.Upper),
            row.Mismatch("additive_lower", funnel.LimitsAt(148, 0.95, FunnelModel.Additive)?.Lower), row.Mismatch("additive_upper", funnel.LimitsAt(148, 0.95, FunnelModel.Additive)?.Upper),
            .. GroupRows.Mismatches(row, "scores", funnel.Points.Select(point => point.Score)), .. GroupRows.Mismatches(row, "additive_scores", funnel.Points.Select(point => point.AdditiveScore)),
        ];
    });

    [Fact]
    public void Both_tables_have_at_least_fifty_independent_rows()
    {
        foreach (var name in new[] { "funnel-limits", "funnels" })
            ReferenceTable.Load(name).Count(row => row.Kind == "independent").Should().BeGreaterThanOrEqualTo(50, name);
    }

    [Fact]
    public void Between_its_neighbouring_counts_a_limit_lies_where_the_distribution_function_reaches_the_level() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Long[1, 3000], Gen.Int[0, 5]).Sample((target, trials, level) =>
        {
            var probability = new[] { 0.001, 0.025, 0.3, 0.7, 0.975, 0.999 }[level];
            var limit = FunnelLimits.Exact(target, trials, probability) * trials;
            double Cumulative(long r)
            {
                // Added up term by term, on logarithms.
                double sum = 0, log = trials * Math.Log(1 - target);
                for (long k = 0; k <= r; k++)
                {
                    sum += Math.Exp(log);
                    log += Math.Log((double)(trials - k) / (k + 1) * target / (1 - target));
                }

                return sum;
            }

            var above = (long)Math.Ceiling(limit - 1e-9);
            return Cumulative(above) >= probability - 1e-9 && Cumulative(above - 1) <= probability + 1e-9 && limit > -1 && limit <= trials;
        }, iter: 300);

    [Fact]
    public void The_hospitals_are_overdispersed_so_the_limits_are_additive_and_one_hospital_is_outside_the_inner_ones()
    {
        var funnel = FunnelPlot.Of(GroupRows.Read(ReferenceTable.Load("funnels").Single(row => row.Id == "surgical")));
        funnel.Overdispersed.Should().BeTrue();
        funnel.Model.Should().Be(FunnelModel.Additive);
        funnel.Points.Where(point => point.Inner != FunnelStanding.Within).Select(point => point.Index).Should().Equal(7);
        funnel.Outside.Should().BeEmpty();
        FunnelPlot.Of([.. funnel.Points.Select(point => point.Group)], new FunnelOptions { Model = FunnelModel.Exact }).Outside.Select(point => point.Index).Should().Equal(7);
    }

    // Computed apart with R 4.2.2 quantile(type = 7).
    [Fact]
    public void The_hospitals_scores_are_drawn_in_to_the_tenth_and_the_ninetieth_percentile()
    {
        var scores = FunnelPlot.Of(GroupRows.Read(ReferenceTable.Load("funnels").Single(row => row.Id == "surgical"))).Points.Select(point => point.WinsorisedScore!.Value).ToList();
        scores.Min().Should().BeApproximately(-1.92945075, 5e-9);
        scores.Max().Should().BeApproximately(2.38842446, 5e-9);
    }

    [Fact]
    public void A_design_effect_stretches_limits_by_its_root_and_standing_agrees_with_the_limits_drawn() => Gen.Select(GroupRows.Drawn, Gen.Double[1, 9]).Sample((groups, effect) =>
    {
        var (plain, wide) = (FunnelPlot.Of(groups, new FunnelOptions { Model = FunnelModel.Exact }), FunnelPlot.Of(groups, new FunnelOptions { Model = FunnelModel.Exact, DesignEffect = effect }));
        wide.Reason.Should().Be(plain.Reason);
        if (plain.Reason is not null) return;
        wide.Overdispersion!.Value.Should().BeApproximately(plain.Overdispersion!.Value / effect, 1e-9 * plain.Overdispersion.Value);
        foreach (var (before, after) in plain.Points.Zip(wide.Points))
        {
            if (before.Group.Rate is not { } rate) continue;
            after.Score!.Value.Should().BeApproximately(before.Score!.Value / Math.Sqrt(effect), 1e-9 * (1 + Math.Abs(before.Score.Value)));
            Standing(rate, wide.LimitsAt(before.Group.Trials, 0.998)!.Value).Should().Be(after.Outer);
            Standing(rate, wide.LimitsAt(before.Group.Trials, 0.95)!.Value).Should().Be(after.Inner);
        }
    }, iter: 150);

    [Fact]
    public void One_bad_site_among_forty_alike_stands_out_and_does_not_widen_the_funnel()
    {
        GroupCount[] groups = [.. Enumerable.Range(0, 40).Select(i => new GroupCount(20 + (i % 5) - 2, 1000)), new(80, 1000)];
        var funnel = FunnelPlot.Of(groups);
        funnel.Overdispersed.Should().BeFalse();
        funnel.Outside.Select(point => point.Index).Should().Equal(40);
    }

    [Fact]
    public void Points_keep_their_place_whatever_the_order_and_standing_agrees_with_the_limits_drawn() => GroupRows.Drawn.Sample(groups =>
    {
        var funnel = FunnelPlot.Of(groups);
        var turned = FunnelPlot.Of([.. groups.Reverse()]);
        if (funnel.Reason is { } reason) return turned.Reason == reason && funnel.Points.All(point => point.Score is null && point.Outer is null);
        return funnel.Points.Zip(turned.Points.Reverse()).All(pair =>
            pair.First.Group == pair.Second.Group && pair.First.Score == pair.Second.Score && pair.First.Outer == pair.Second.Outer && pair.First.AdditiveScore == pair.Second.AdditiveScore
            && (pair.First.Group.Rate is not { } rate || Standing(rate, funnel.LimitsAt(pair.First.Group.Trials, 0.998)!.Value) == pair.First.Outer));
    }, iter: 150);

    [Fact]
    public void Limits_widen_with_confidence_and_narrow_with_size() => GroupRows.Drawn.Sample(groups =>
    {
        var funnel = FunnelPlot.Of(groups);
        if (funnel.Reason is not null) return;
        foreach (var model in Enum.GetValues<FunnelModel>())
        {
            var (inner, outer, large) = (funnel.LimitsAt(200, 0.95, model)!.Value, funnel.LimitsAt(200, 0.998, model)!.Value, funnel.LimitsAt(20000, 0.95, model)!.Value);
            (outer.Lower <= inner.Lower && outer.Upper >= inner.Upper).Should().BeTrue();
            outer.Lower.Should().BeGreaterThanOrEqualTo(0);

            // Where 200 trials expect less than a tenth of an event, their exact limit of 95 % may be none at all, narrower than that of 20,000 that expect some.
            if (model == FunnelModel.Exact && 200 * Math.Min(funnel.Target!.Value, 1 - funnel.Target.Value) < 0.1) continue;
            large.Width.Should().BeLessThanOrEqualTo(inner.Width + 1e-12);
        }
    }, iter: 50);

    [Fact]
    public void Where_next_to_no_event_is_expected_the_exact_limit_is_none_and_one_event_lies_outside()
    {
        // 200 trials that expect 0.02 events: none in 98 % of such groups, so 97.5 % have at most none.
        FunnelLimits.Exact(1e-4, 200, 0.975).Should().BeInRange(-1.0 / 200, 0);
        FunnelPlot.Of([new(1, 200), new(1, 20_000), new(0, 200)], new FunnelOptions { Target = 1e-4, Model = FunnelModel.Exact }).Points.Select(point => point.Inner)
            .Should().Equal(FunnelStanding.Above, FunnelStanding.Within, FunnelStanding.Within);
    }

    [Fact]
    public void What_cannot_be_placed_says_why()
    {
        FunnelPlot.Of([]).Reason.Should().Be(UndefinedReason.NoTrials);
        FunnelPlot.Of([new(0, 10), new(0, 30)]).Reason.Should().Be(UndefinedReason.CentreAtTheEdge);
        FunnelPlot.Of([new(0, 10), new(0, 30)]).LimitsAt(10, 0.95).Should().BeNull();
        var funnel = FunnelPlot.Of([new(0, 0), new(0, 10), new(3, 30)]);
        funnel.Points[0].Reason.Should().Be(UndefinedReason.NoTrials);
        funnel.Points[1].Reason.Should().BeNull();
        var one = FunnelPlot.Of([new(3, 30)]);
        one.Points.Single().Outer.Should().Be(FunnelStanding.Within);
        one.Overdispersed.Should().BeFalse();
        FluentActions.Invoking(() => FunnelPlot.Of([], new FunnelOptions { Inner = 0.99, Outer = 0.95 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FunnelPlot.Of([], new FunnelOptions { Winsorised = 0.5 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FunnelPlot.Of([], new FunnelOptions { Target = 1.2 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => FunnelLimits.Exact(0, 10, 0.5)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static FunnelStanding Standing(double rate, Interval limits) =>
        rate > limits.Upper * (1 + 1e-12) ? FunnelStanding.Above : rate < limits.Lower * (1 - 1e-12) ? FunnelStanding.Below : FunnelStanding.Within;
}
