using ScreenStats.Statistics.Trends.Smooths.Splines;

namespace ScreenStats.Statistics.Tests.Trends.Smooths;

public sealed class PenalisedSplineTests
{
    private static readonly Gen<SplineCount[]> Drawn = Gen.Select(Gen.Int[1, 80], Gen.Double[0, 1]).Array[6, 16].Select(weeks =>
        weeks.Select((week, i) => new SplineCount(i, Math.Floor(week.Item2 * week.Item1), week.Item1)).ToArray());

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("penalised-splines"), row =>
    {
        SplineCount[] counts = [.. row.Text("counts").Split(' ').Select(part =>
        {
            var figures = part.Split(':', '/');
            return new SplineCount(LevelRows.Number(figures[0]), LevelRows.Number(figures[1]), LevelRows.Number(figures[2]));
        })];
        var smoothing = row.Text("smoothing");
        var options = new SplineOptions
        {
            Segments = (int)row.Count("segments"), Lower = row.Number("lower"), Upper = row.Number("upper"), Confidence = row.Number("confidence"),
            Smoothing = char.IsAsciiDigit(smoothing[0]) ? row.Number("smoothing") : null,
            Choice = smoothing == "cross-validation" ? SmoothingChoice.CrossValidation : SmoothingChoice.RestrictedLikelihood,
        };
        var fit = row.Text("family") == "poisson" ? PenalisedSpline.Poisson(counts, options) : PenalisedSpline.Binomial(counts, options);
        return
        [
            row.Mismatch("degrees_of_freedom", fit.DegreesOfFreedom), row.Mismatch("deviance", fit.Deviance), row.Mismatch("criterion", fit.Criterion),
            row.Mismatch("cross_validation", fit.CrossValidation), row.Mismatch("restricted_log_likelihood", fit.RestrictedLogLikelihood),
            .. LevelRows.Mismatches(row, "rates", fit.Points, point => point.Rate), .. LevelRows.Mismatches(row, "lowers", fit.Points, point => point.Band.Lower),
            .. LevelRows.Mismatches(row, "uppers", fit.Points, point => point.Band.Upper),
        ];
    });

    [Fact]
    public void The_table_has_at_least_fifty_independent_rows_given_and_chosen()
    {
        var rows = ReferenceTable.Load("penalised-splines").Where(row => row.Kind == "independent").ToList();
        rows.Count(row => char.IsAsciiDigit(row.Text("smoothing")[0])).Should().BeGreaterThanOrEqualTo(50);
        rows.Count(row => !char.IsAsciiDigit(row.Text("smoothing")[0])).Should().BeGreaterThanOrEqualTo(50);
    }

    [Fact]
    public void Events_and_the_others_change_places_and_the_curve_is_mirrored() => Drawn.Sample(weeks =>
    {
        var options = new SplineOptions { Smoothing = 2 };
        var fit = PenalisedSpline.Binomial(weeks, options);
        var turned = PenalisedSpline.Binomial([.. weeks.Select(week => new SplineCount(week.At, week.Trials - week.Events, week.Trials))], options);
        if (fit.Reason is not null) return;
        fit.Points.Zip(turned.Points).Should().OnlyContain(pair => Math.Abs(pair.First.Link + pair.Second.Link) < 1e-6 && Math.Abs(pair.First.LinkDeviation - pair.Second.LinkDeviation) < 1e-6);
    }, iter: 60);

    [Fact]
    public void Order_and_splitting_change_nothing_and_the_sums_of_events_and_of_their_times_are_kept() => Drawn.Sample(weeks =>
    {
        var fit = PenalisedSpline.Binomial(weeks, new SplineOptions { Smoothing = 5 });
        var changed = PenalisedSpline.Binomial([.. weeks.Reverse().SelectMany(week => week.Events > 0 && week.Events < week.Trials
            ? new[] { new SplineCount(week.At, week.Events, week.Events), new SplineCount(week.At, 0, week.Trials - week.Events) } : [week])], new SplineOptions { Smoothing = 5 });
        fit.Reason.Should().Be(changed.Reason);
        fit.Coefficients.Should().Equal(changed.Coefficients);
        if (fit.Reason is not null) return;

        // The penalty leaves straight lines free.
        weeks.Sum(week => week.Events).Should().BeApproximately(fit.Points.Sum(point => point.Count.Trials * point.Rate), 1e-5);
        weeks.Sum(week => week.At * week.Events).Should().BeApproximately(fit.Points.Sum(point => point.Count.At * point.Count.Trials * point.Rate), 1e-4);
    }, iter: 60);

    [Fact]
    public void Much_smoothing_leaves_a_straight_line_and_none_more_freedom_than_points() => Drawn.Sample(weeks =>
    {
        var freedom = new[] { 0.1, 1, 10, 1e3, 1e8 }.Select(smoothing => PenalisedSpline.Binomial(weeks, new SplineOptions { Smoothing = smoothing }).DegreesOfFreedom).ToArray();
        if (freedom.Any(one => one is null)) return;
        // A penalty of 1e8 beside weights of about one leaves eight of sixteen digits, and fewer where weights differ.
        freedom.Should().OnlyContain(one => one > 2 - 1e-4 && one < weeks.Length + 1e-6);
        freedom[^1].Should().BeApproximately(2, 1e-3);
        PenalisedSpline.Binomial(weeks, new SplineOptions { Smoothing = 1e8 }).IsStraight.Should().BeTrue();
    }, iter: 40);

    [Fact]
    public void A_straight_line_on_the_logit_is_found_straight()
    {
        SplineCount[] counts = [.. Enumerable.Range(0, 20).Select(week => new SplineCount(week, 1000 / (1 + Math.Exp(3 - (0.1 * week))), 1000))];
        foreach (var choice in new[] { SmoothingChoice.RestrictedLikelihood, SmoothingChoice.CrossValidation })
        {
            var fit = PenalisedSpline.Binomial(counts, new SplineOptions { Choice = choice });
            fit.IsStraight.Should().BeTrue();
            fit.Points.Should().OnlyContain(point => Math.Abs(point.Link - (-3 + (0.1 * point.Count.At))) < 1e-6);
        }
    }

    [Fact]
    public void Points_without_tests_are_smoothed_over_with_a_wider_band()
    {
        SplineCount[] counts = [.. Enumerable.Range(0, 20).Select(week => week is > 6 and < 12 ? new SplineCount(week, 0, 0) : new SplineCount(week, 3 + (week % 4), 100))];
        var fit = PenalisedSpline.Binomial(counts, new SplineOptions { Smoothing = 1 });
        fit.Counts.Should().Be(15);
        fit.Points.Should().HaveCount(20);
        fit.Points[9].LinkDeviation.Should().BeGreaterThan(fit.Points[4].LinkDeviation);
    }

    [Fact]
    public void Stiff_fits_from_a_flat_start_settle()
    {
        // The case in which steps that are not halved run away: rare events rising a hundredfold, a weak penalty.
        SplineCount[] counts = [.. Enumerable.Range(0, 30).Select(week => new SplineCount(week, week < 20 ? week % 2 : 10 + week, week < 20 ? 20_000 : 200))];
        foreach (var smoothing in new[] { 1e-6, 1e-3, 1, 1e4 })
            PenalisedSpline.Binomial(counts, new SplineOptions { Smoothing = smoothing }).Reason.Should().BeNull($"{smoothing}");
    }

    [Fact]
    public void What_cannot_be_fitted_says_why_and_bad_figures_are_refused()
    {
        PenalisedSpline.Binomial([]).Reason.Should().Be(UndefinedReason.NoTrials);
        PenalisedSpline.Binomial([new(1, 0, 0)]).Reason.Should().Be(UndefinedReason.NoTrials);
        PenalisedSpline.Binomial([new(1, 0, 9), new(2, 0, 9)]).Reason.Should().Be(UndefinedReason.NoEvents);
        PenalisedSpline.Binomial([new(1, 9, 9), new(2, 9, 9)]).Reason.Should().Be(UndefinedReason.OnlyEvents);
        PenalisedSpline.Binomial([new(1, 3, 9)]).Reason.Should().Be(UndefinedReason.FewerThanTwoPeriods);
        PenalisedSpline.Binomial([new(1, 3, 9), new(2, 4, 9), new(3, 4, 9)]).Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        PenalisedSpline.Binomial([new(1, 3, 9), new(2, 4, 9)], new SplineOptions { Smoothing = 1 }).DegreesOfFreedom.Should().BeApproximately(2, 1e-6);
        PenalisedSpline.Binomial([new(1, 0, 9), new(2, 0, 9), new(3, 9, 9), new(4, 9, 9)]).Reason.Should().Be(UndefinedReason.Separation);
        PenalisedSpline.Poisson([new(1, 0, 9), new(2, 0, 9), new(3, 0, 9), new(4, 7, 9)]).Reason.Should().Be(UndefinedReason.Separation);
        FluentActions.Invoking(() => PenalisedSpline.Binomial([new(1, 3, 2)])).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => new SplineCount(1, 1, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PenalisedSpline.Binomial([new(1, 1, 2)], new SplineOptions { Lower = 2 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PenalisedSpline.Binomial([new(1, 1, 2)], new SplineOptions { Smoothing = 0 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PenalisedSpline.Binomial([new(1, 1, 2)], new SplineOptions { Segments = 1 })).Should().Throw<ArgumentOutOfRangeException>();
    }
}
