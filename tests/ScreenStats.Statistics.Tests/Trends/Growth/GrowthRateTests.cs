using ScreenStats.Statistics.Tests.Regression;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.Growth;
using ScreenStats.Statistics.Trends.Series;

namespace ScreenStats.Statistics.Tests.Trends.Growth;

public sealed class GrowthRateTests
{
    private static readonly TrendScale[] Scales = Enum.GetValues<TrendScale>();

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("growth"), row =>
    {
        var fit = GrowthRate.Of(SeriesRows.Read(row.Text("points")), new SeriesOptions
        {
            Scale = SeriesRows.Scale(row), Limits = SeriesRows.Limits(row), Lag = row.Has("lag") ? (int)row.Count("lag") : null, SmallSampleFactor = row.Text("factor") == "TRUE",
            Student = row.Text("student") == "TRUE", LeastDispersion = row.Number("least"), Confidence = row.Number("confidence"),
        });
        return
        [
            row.Mismatch("growth", fit.Growth.Value), row.Mismatch("lower", fit.Growth.Lower), row.Mismatch("upper", fit.Growth.Upper), row.Mismatch("standard_error", fit.StandardError),
            row.Mismatch("change", fit.Change.Value), row.Mismatch("time", fit.Turnover.Time.Value), row.Mismatch("time_lower", fit.Turnover.Time.Lower), row.Mismatch("time_upper", fit.Turnover.Time.Upper),
            row.Mismatch("deviance", fit.Deviance), row.Mismatch("dispersion", fit.Dispersion),
            fit.Turnover.Kind == (row.Text("kind_of_time") == "doubling" ? TurnoverKind.Doubling : TurnoverKind.Halving) ? null : $"{row}: the kind of time is {fit.Turnover.Kind}",
        ];
    });

    [Fact]
    public void The_table_has_at_least_thirty_independent_rows_of_each_scale_and_fifteen_of_each_limits()
    {
        var rows = ReferenceTable.Load("growth").Where(row => row.Kind == "independent").ToList();
        foreach (var scale in new[] { "odds", "share", "events" }) rows.Count(row => row.Text("scale") == scale).Should().BeGreaterThanOrEqualTo(30, scale);
        foreach (var limits in new[] { "plain", "quasi", "robust", "profile" }) rows.Count(row => row.Text("limits") == limits).Should().BeGreaterThanOrEqualTo(15, limits);
    }

    [Fact]
    public void Limits_that_span_no_change_leave_the_longer_end_open_with_the_reason()
    {
        CountPoint[] points = [new(0, 5, 100), new(1, 6, 100), new(2, 4, 100), new(3, 7, 100)];
        var fit = GrowthRate.Of(points);
        fit.Direction.Should().Be(TrendDirection.CannotTell);
        fit.Turnover.Kind.Should().Be(TurnoverKind.Doubling);
        fit.Turnover.Time.Upper.Should().BeNull();
        fit.Turnover.Time.UpperReason.Should().Be(UndefinedReason.SlopeMayBeNil);
        fit.Turnover.Time.Lower.Should().Be(fit.Turnover.FastestDoubling);
        fit.Turnover.FastestHalving!.Value.Should().BeApproximately(Math.Log(2) / -fit.Growth.Lower!.Value, 1e-12);
    }

    [Fact]
    public void Nothing_is_ever_infinite_and_limits_hold_the_value() => Gen.Select(SeriesRows.Drawn, SeriesRows.Options).Sample((points, options) =>
    {
        var fit = GrowthRate.Of(points, options);
        foreach (var figure in new[] { fit.Growth, fit.Change, fit.Turnover.Time })
        {
            foreach (var (end, reason) in new[] { (figure.Value, figure.Reason), (figure.Lower, figure.LowerReason), (figure.Upper, figure.UpperReason) })
            {
                (end is null).Should().Be(reason is not null);
                if (end is { } number) double.IsFinite(number).Should().BeTrue();
            }

            if (figure.IsClosed) figure.Value!.Value.Should().BeInRange(figure.Lower!.Value, figure.Upper!.Value);
        }

        (fit.Turnover.Time.Value is null or > 0).Should().BeTrue();
        (fit.Direction == TrendDirection.Rising).Should().Be(fit.Growth.Lower > 0);
        (fit.Direction == TrendDirection.Falling).Should().Be(fit.Growth.Upper < 0);
    }, iter: 400);

    [Fact]
    public void Time_turned_round_turns_the_growth_and_another_unit_of_time_divides_it() => Gen.Select(SeriesRows.Drawn, SeriesRows.Options).Sample((points, options) =>
    {
        var fit = GrowthRate.Of(points, options);
        var turned = GrowthRate.Of([.. points.Select(point => new CountPoint(-point.Time, point.Events, point.Size))], options);
        var days = GrowthRate.Of([.. points.Select(point => new CountPoint(737000 + (7 * point.Time), point.Events, point.Size))], options);
        (turned.Reason == fit.Reason && days.Reason == fit.Reason).Should().BeTrue();
        static bool Agrees(double? a, double? b, double factor) => (a is null) == (b is null) && (a is null || RegressionRows.Close(a.Value, factor * b!.Value, 1e-7));
        Agrees(turned.Growth.Lower, fit.Growth.Upper, -1).Should().BeTrue();
        Agrees(turned.Growth.Upper, fit.Growth.Lower, -1).Should().BeTrue();
        Agrees(days.Growth.Lower, fit.Growth.Lower, 1 / 7.0).Should().BeTrue();
        Agrees(days.Growth.Upper, fit.Growth.Upper, 1 / 7.0).Should().BeTrue();
    }, iter: 200);

    [Fact]
    public void On_the_scale_of_odds_others_than_events_have_the_opposite_growth() => SeriesRows.Drawn.Sample(points =>
    {
        var (fit, others) = (GrowthRate.Of(points), GrowthRate.Of([.. points.Select(point => new CountPoint(point.Time, point.Size - point.Events, point.Size))]));
        if (fit.Growth.Value is { } growth && fit.Reason is null) RegressionRows.Close(others.Growth.Value!.Value, -growth, 1e-8).Should().BeTrue();
    }, iter: 100);

    [Fact]
    public void Profile_and_plain_limits_agree_where_events_are_many()
    {
        CountPoint[] points = [.. Enumerable.Range(0, 10).Select(i => new CountPoint(i, 4000 + (200 * i), 100000))];
        foreach (var scale in Scales)
        {
            var (plain, profile) = (GrowthRate.Of(points, new SeriesOptions { Scale = scale }), GrowthRate.Of(points, new SeriesOptions { Scale = scale, Limits = TrendLimits.ProfileLikelihood }));
            profile.Growth.Lower!.Value.Should().BeApproximately(plain.Growth.Lower!.Value, 1e-5);
            profile.Growth.Upper!.Value.Should().BeApproximately(plain.Growth.Upper!.Value, 1e-5);
        }
    }

    [Fact]
    public void All_events_in_the_last_period_rise_without_bound_and_the_lower_limit_is_given()
    {
        CountPoint[] points = [new(0, 0, 100), new(1, 0, 100), new(2, 0, 100), new(3, 7, 100)];
        foreach (var scale in Scales)
        {
            var fit = GrowthRate.Of(points, new SeriesOptions { Scale = scale });
            fit.Reason.Should().Be(UndefinedReason.EventsInOnePeriod);
            fit.Growth.Value.Should().BeNull();
            fit.Growth.UpperReason.Should().Be(UndefinedReason.EventsInOnePeriod);
            fit.Direction.Should().Be(TrendDirection.Rising);
            fit.Turnover.Kind.Should().Be(TurnoverKind.Doubling);
            fit.Turnover.Time.Upper!.Value.Should().BeApproximately(Math.Log(2) / fit.Growth.Lower!.Value, 1e-12);

            // The limit is where all events in the last period are as improbable as the quantile says.
            if (scale == TrendScale.Events)
            {
                var r = fit.Growth.Lower.Value;
                var share = Math.Exp(3 * r) / (1 + Math.Exp(r) + Math.Exp(2 * r) + Math.Exp(3 * r));
                (-2 * 7 * Math.Log(share)).Should().BeApproximately(3.841458820694124, 1e-8);
            }

            var falling = GrowthRate.Of([.. points.Select(point => new CountPoint(3 - point.Time, point.Events, point.Size))], new SeriesOptions { Scale = scale });
            falling.Growth.Upper!.Value.Should().BeApproximately(-fit.Growth.Lower!.Value, 1e-8);
            falling.Direction.Should().Be(TrendDirection.Falling);
        }
    }

    [Fact]
    public void One_event_in_the_last_period_proves_no_rise()
    {
        var fit = GrowthRate.Of(new CountPoint[] { new(0, 0, 100), new(1, 1, 100) });
        fit.Reason.Should().Be(UndefinedReason.EventsInOnePeriod);
        fit.Growth.Lower!.Value.Should().BeLessThan(0);
        fit.Direction.Should().Be(TrendDirection.CannotTell);
        fit.Turnover.Kind.Should().Be(TurnoverKind.None);
    }

    [Fact]
    public void Complete_separation_of_the_odds_is_a_rise_without_bound()
    {
        var fit = GrowthRate.Of(new CountPoint[] { new(0, 0, 9), new(1, 0, 9), new(2, 9, 9), new(3, 9, 9) });
        fit.Reason.Should().Be(UndefinedReason.EventsInOnePeriod);
        fit.Direction.Should().Be(TrendDirection.Rising);
    }

    [Fact]
    public void Series_that_say_nothing_give_their_reason()
    {
        foreach (var scale in Scales)
        {
            var options = new SeriesOptions { Scale = scale };
            GrowthRate.Of(Array.Empty<CountPoint>(), options).Reason.Should().Be(UndefinedReason.NoTrials);
            GrowthRate.Of(new CountPoint[] { new(0, 0, 0), new(1, 0, 0) }, options).Reason.Should().Be(UndefinedReason.NoTrials);
            GrowthRate.Of(new CountPoint[] { new(0, 0, 10), new(1, 0, 20) }, options).Reason.Should().Be(UndefinedReason.NoEvents);
            var one = GrowthRate.Of(new CountPoint[] { new(4, 2, 10), new(4, 1, 10), new(5, 0, 0) }, options);
            one.Reason.Should().Be(UndefinedReason.TooFewPeriods);
            one.Direction.Should().Be(TrendDirection.CannotTell);
            (one.From, one.To, one.EventTotal, one.SizeTotal).Should().Be((4, 4, 3, 20));
        }

        GrowthRate.Of(new CountPoint[] { new(0, 10, 10), new(1, 20, 20) }).Reason.Should().Be(UndefinedReason.OnlyEvents);
    }

    [Fact]
    public void Two_periods_have_a_growth_and_no_scatter_to_judge_limits_by()
    {
        CountPoint[] points = [new(0, 10, 100), new(1, 20, 100)];
        GrowthRate.Of(points).Growth.Value!.Value.Should().BeApproximately(Math.Log(2.25), 1e-12);
        foreach (var limits in new[] { TrendLimits.Quasi, TrendLimits.Robust })
        {
            var fit = GrowthRate.Of(points, new SeriesOptions { Limits = limits });
            fit.Reason.Should().BeNull();
            fit.Growth.LowerReason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
            fit.StandardError.Should().BeNull();
            fit.PValue.Should().BeNull();
            fit.Direction.Should().Be(TrendDirection.CannotTell);
        }
    }

    [Fact]
    public void A_series_that_does_not_move_neither_doubles_nor_halves()
    {
        var fit = GrowthRate.Of(new CountPoint[] { new(0, 10, 100), new(1, 10, 100), new(2, 10, 100) });
        Math.Abs(fit.Growth.Value!.Value).Should().BeLessThan(1e-12);
        fit.Direction.Should().Be(TrendDirection.CannotTell);
        GrowthRate.Turnover(fit.Growth with { Value = 0 }).Kind.Should().Be(TurnoverKind.None);
        GrowthRate.Turnover(fit.Growth with { Value = 0 }).Time.Reason.Should().Be(UndefinedReason.SlopeNil);
    }

    [Fact]
    public void Counts_of_trials_are_points_of_their_size_and_quasi_can_be_held_at_one()
    {
        TimedCount[] counts = [new(0, 10, 100), new(1, 12, 110), new(2, 14, 120), new(3, 17, 130)];
        var fit = GrowthRate.Of(counts, new SeriesOptions { Limits = TrendLimits.Quasi });
        fit.Dispersion!.Value.Should().BeLessThan(1);
        var held = GrowthRate.Of(counts, new SeriesOptions { Limits = TrendLimits.Quasi, LeastDispersion = 1 });
        held.StandardError!.Value.Should().BeApproximately(GrowthRate.Of(counts).StandardError!.Value, 1e-14);
        fit.StandardError!.Value.Should().BeLessThan(held.StandardError.Value);
        GrowthRate.Of(counts, new SeriesOptions { Limits = TrendLimits.Quasi, LeastDispersion = 1, Student = true }).Growth.Upper.Should().BeGreaterThan(held.Growth.Upper!.Value);
    }

    [Fact]
    public void What_cannot_be_asked_is_refused()
    {
        FluentActions.Invoking(() => new CountPoint(0, 1, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new CountPoint(double.NaN, 1, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new CountPoint(0, 1, double.PositiveInfinity)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => GrowthRate.Of(new CountPoint[] { new(0, 3, 2) })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => GrowthRate.Of(Array.Empty<CountPoint>(), new SeriesOptions { Confidence = 0 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => GrowthRate.Of(Array.Empty<CountPoint>(), new SeriesOptions { Lag = -1 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => GrowthRate.Of(Array.Empty<CountPoint>(), new SeriesOptions { LeastDispersion = -1 })).Should().Throw<ArgumentOutOfRangeException>();
    }
}
