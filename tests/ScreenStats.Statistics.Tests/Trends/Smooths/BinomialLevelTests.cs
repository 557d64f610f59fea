using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Trends.Smooths;

namespace ScreenStats.Statistics.Tests.Trends.Smooths;

public sealed class BinomialLevelTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("binomial-levels"), row =>
    {
        var sigma = row.Text("sigma");
        var fit = BinomialLevel.Fit(LevelRows.Periods(row), new BinomialLevelOptions
        {
            Sigma = sigma is "likely" or "averaged" ? null : row.Number("sigma"), AverageOverSigma = sigma == "averaged", Start = LevelRows.Start(row), Confidence = row.Number("confidence"),
        });
        fit.Reason.Should().BeNull(row.Id);
        return
        [
            row.Mismatch("log_likelihood", fit.LogLikelihood), row.Mismatch("sigma_found", fit.Sigma),
            .. GroupRows.Mismatches(row, "filtered_rates", fit.Points.Where(point => point.Filtered is not null).Select(point => point.Filtered?.Rate)),
            .. LevelRows.Mismatches(row, "logit_means", fit.Points, point => point.Smoothed.LogitMean), .. LevelRows.Mismatches(row, "logit_deviations", fit.Points, point => point.Smoothed.LogitDeviation),
            .. LevelRows.Mismatches(row, "rates", fit.Points, point => point.Smoothed.Rate),
            .. LevelRows.Mismatches(row, "lowers", fit.Points, point => point.Smoothed.Band.Lower), .. LevelRows.Mismatches(row, "uppers", fit.Points, point => point.Smoothed.Band.Upper),
        ];
    });

    [Fact]
    public void The_table_has_at_least_fifty_independent_rows_with_sigma_given_and_thirty_with_the_most_likely()
    {
        var rows = ReferenceTable.Load("binomial-levels").Where(row => row.Kind == "independent").ToList();
        rows.Count(row => row.Text("sigma") is not ("likely" or "averaged")).Should().BeGreaterThanOrEqualTo(50);
        rows.Count(row => row.Text("sigma") == "likely").Should().BeGreaterThanOrEqualTo(30);
    }

    [Fact]
    public void Events_and_the_others_change_places_and_the_smooth_is_mirrored() => LevelRows.Drawn.Sample(weeks =>
    {
        var fit = BinomialLevel.Fit(weeks, new BinomialLevelOptions { Sigma = 0.3, Start = LevelStart.HalfAnEvent });
        var turned = BinomialLevel.Fit([.. weeks.Select(week => new PeriodCount(week.Period, week.Trials - week.Events, week.Trials))], new BinomialLevelOptions { Sigma = 0.3, Start = LevelStart.HalfAnEvent });
        if (fit.Reason is not null) return;
        fit.LogLikelihood.Should().BeApproximately(turned.LogLikelihood!.Value, 1e-8);
        foreach (var (one, other) in fit.Points.Zip(turned.Points))
        {
            one.Smoothed.LogitMean.Should().BeApproximately(-other.Smoothed.LogitMean, 1e-7);
            one.Smoothed.LogitDeviation.Should().BeApproximately(other.Smoothed.LogitDeviation, 1e-7);
            one.Smoothed.Band.Lower.Should().BeApproximately(1 - other.Smoothed.Band.Upper, 1e-6);
        }
    }, iter: 25);

    [Fact]
    public void Time_turned_round_gives_the_same_smooth_from_a_diffuse_start() => LevelRows.Drawn.Sample(weeks =>
    {
        var fit = BinomialLevel.Fit(weeks, new BinomialLevelOptions { Sigma = 0.25 });
        var turned = BinomialLevel.Fit([.. weeks.Select(week => new PeriodCount(-week.Period, week.Events, week.Trials))], new BinomialLevelOptions { Sigma = 0.25 });
        fit.Reason.Should().Be(turned.Reason);
        if (fit.Reason is not null) return;
        fit.LogLikelihood.Should().BeApproximately(turned.LogLikelihood!.Value, 1e-8);
        foreach (var (one, other) in fit.Points.Zip(turned.Points.Reverse()))
        {
            one.Smoothed.LogitMean.Should().BeApproximately(other.Smoothed.LogitMean, 1e-6);
            one.Smoothed.Rate.Should().BeApproximately(other.Smoothed.Rate, 1e-7);
        }
    }, iter: 25);

    [Fact]
    public void Order_splitting_and_the_number_of_the_first_period_change_nothing() => LevelRows.Drawn.Sample(weeks =>
    {
        var options = new BinomialLevelOptions { Sigma = 0.2, Start = LevelStart.HalfAnEvent };
        var fit = BinomialLevel.Fit(weeks, options);
        var changed = BinomialLevel.Fit([.. weeks.Reverse().SelectMany(week => new[]
        {
            new PeriodCount(week.Period + 1000, week.Events, week.Events), new PeriodCount(week.Period + 1000, 0, week.Trials - week.Events),
        })], options);
        fit.Reason.Should().Be(changed.Reason);
        fit.LogLikelihood.Should().Be(changed.LogLikelihood);
        fit.Points.Select(point => point.Smoothed).Should().Equal(changed.Points.Select(point => point.Smoothed));
    }, iter: 25);

    [Fact]
    public void A_wider_step_widens_the_band_of_the_logit_and_more_confidence_the_band() => LevelRows.Drawn.Sample(weeks =>
    {
        // With equal trials and rates near a half the information does not depend on the rate.
        PeriodCount[] even = [.. weeks.Select((week, i) => new PeriodCount(week.Period, 200 + (i % 3), 400))];
        BinomialLevelFit At(double sigma, double confidence) => BinomialLevel.Fit(even, new BinomialLevelOptions { Sigma = sigma, Confidence = confidence });
        var (narrow, wide, sure) = (At(0.1, 0.95), At(0.2, 0.95), At(0.1, 0.99));
        for (var t = 0; t < even.Length; t++)
        {
            wide.Points[t].Smoothed.LogitDeviation.Should().BeGreaterThan(narrow.Points[t].Smoothed.LogitDeviation);
            var (inner, outer) = (narrow.Points[t].Smoothed.Band, sure.Points[t].Smoothed.Band);
            (outer.Lower < inner.Lower && outer.Upper > inner.Upper && inner.Contains(narrow.Points[t].Smoothed.Rate)).Should().BeTrue();
        }
    }, iter: 10);

    [Fact]
    public void A_gap_is_as_periods_without_tests_and_widens_the_band_in_it()
    {
        PeriodCount[] counts = [new(1, 4, 100), new(2, 5, 100), new(9, 12, 100), new(10, 9, 100)];
        var options = new BinomialLevelOptions { Sigma = 0.3 };
        var fit = BinomialLevel.Fit(counts, options);
        var filled = BinomialLevel.Fit([.. counts, .. Enumerable.Range(3, 6).Select(week => new PeriodCount(week, 0, 0))], options);
        filled.Points.Should().HaveCount(10);
        filled.LogLikelihood.Should().BeApproximately(fit.LogLikelihood!.Value, 1e-9);
        foreach (var point in fit.Points)
            filled.Points[(int)point.Count.Period - 1].Smoothed.Rate.Should().BeApproximately(point.Smoothed.Rate, 1e-9);
        filled.Points[4].Smoothed.LogitDeviation.Should().BeGreaterThan(filled.Points[2].Smoothed.LogitDeviation).And.BeGreaterThan(filled.Points[9].Smoothed.LogitDeviation);
    }

    [Fact]
    public void A_lattice_wider_than_the_steps_agrees_with_one_that_holds_them()
    {
        // 400 tests a week at steps of 0.01: the lattice's points lie further apart than the steps.
        PeriodCount[] counts = [.. Enumerable.Range(0, 40).Select(week => new PeriodCount(week, 20 + (week % 7), 400))];
        var fit = BinomialLevel.Fit(counts, new BinomialLevelOptions { Sigma = 0.01 });
        var near = new[] { 0.0098, 0.0099, 0.0101, 0.0102 }.Select(sigma => BinomialLevel.Fit(counts, new BinomialLevelOptions { Sigma = sigma }).LogLikelihood!.Value).ToArray();

        // The likelihood is smooth in sigma, so that its fourth difference is nothing but error.
        (near[0] - (4 * near[1]) + (6 * fit.LogLikelihood!.Value) - (4 * near[2]) + near[3]).Should().BeApproximately(0, 1e-8);
    }

    [Fact]
    public void A_jump_that_small_steps_all_but_exclude_is_summed_on_a_finer_lattice()
    {
        PeriodCount[] counts = [.. Enumerable.Range(0, 20).Select(week => new PeriodCount(week, week < 10 ? 10 : 60, 1000))];
        var fit = BinomialLevel.Fit(counts, new BinomialLevelOptions { Sigma = 0.02 });
        fit.Reason.Should().BeNull();
        fit.LogLikelihood.Should().BeGreaterThan(BinomialLevel.Fit(counts, new BinomialLevelOptions { Sigma = 0 }).LogLikelihood!.Value);
        fit.Points.Select(point => point.Smoothed.Rate).Should().BeInAscendingOrder();
    }

    [Fact]
    public void Weeks_no_more_different_than_chance_have_a_sigma_of_0_and_it_is_said()
    {
        PeriodCount[] counts = [.. Enumerable.Range(0, 10).Select(week => new PeriodCount(week, 5, 100))];
        var fit = BinomialLevel.Fit(counts);
        (fit.Sigma, fit.SigmaKind).Should().Be((0, SigmaKind.Zero));
        fit.LogLikelihood.Should().Be(fit.ConstantLogLikelihood);
        fit.Points.Select(point => point.Smoothed.Rate).Distinct().Should().ContainSingle().Which.Should().BeApproximately(0.05, 1e-9);

        // Averaged over sigma the band is wider, since a little wandering cannot be excluded.
        var averaged = BinomialLevel.Fit(counts, new BinomialLevelOptions { AverageOverSigma = true });
        averaged.SigmaKind.Should().Be(SigmaKind.Averaged);
        averaged.Sigma.Should().BeGreaterThan(0);
        averaged.Points.Zip(fit.Points).Should().OnlyContain(pair => pair.First.Smoothed.Band.Width > pair.Second.Smoothed.Band.Width);
    }

    [Fact]
    public void The_most_likely_sigma_is_a_top_of_the_likelihood() => LevelRows.Drawn.Sample(weeks =>
    {
        var fit = BinomialLevel.Fit(weeks, new BinomialLevelOptions { Start = LevelStart.Normal(-2, 1.5) });
        if (fit.Reason is not null) return;
        foreach (var factor in new[] { 0.3, 0.8, 0.97, 1.03, 1.3, 3.0 })
        {
            var other = Math.Min(10, fit.Sigma == 0 ? 0.05 * factor : fit.Sigma!.Value * factor);
            BinomialLevel.Fit(weeks, new BinomialLevelOptions { Start = LevelStart.Normal(-2, 1.5), Sigma = other }).LogLikelihood.Should().BeLessThanOrEqualTo(fit.LogLikelihood!.Value + 1e-7);
        }
    }, iter: 6);

    [Fact]
    public void Without_any_event_a_diffuse_start_says_why_and_half_an_event_answers()
    {
        PeriodCount[] none = [new(1, 0, 50), new(2, 0, 40), new(3, 0, 0), new(4, 0, 60)];
        BinomialLevel.Fit(none).Reason.Should().Be(UndefinedReason.NoEvents);
        var fit = BinomialLevel.Fit(none, new BinomialLevelOptions { Start = LevelStart.HalfAnEvent });
        fit.Reason.Should().BeNull();
        fit.Points.Should().OnlyContain(point => point.Smoothed.Band.Lower < 1e-4 && point.Smoothed.Band.Upper < 0.1 && point.Filtered != null);
        PeriodCount[] all = [.. none.Select(week => new PeriodCount(week.Period, week.Trials, week.Trials))];
        BinomialLevel.Fit(all).Reason.Should().Be(UndefinedReason.OnlyEvents);
        BinomialLevel.Fit(all, new BinomialLevelOptions { Start = LevelStart.HalfAnEvent }).Points[0].Smoothed.Rate.Should().BeApproximately(1 - fit.Points[0].Smoothed.Rate, 1e-6);
    }

    [Fact]
    public void One_period_is_smoothed_only_where_sigma_is_given()
    {
        BinomialLevel.Fit([new(7, 3, 50)]).Reason.Should().Be(UndefinedReason.FewerThanTwoPeriods);
        BinomialLevel.Fit([new(7, 3, 50), new(8, 0, 0)]).Reason.Should().Be(UndefinedReason.FewerThanTwoPeriods);
        var fit = BinomialLevel.Fit([new(7, 3, 50)], new BinomialLevelOptions { Sigma = 0.2 });
        fit.Points[0].Smoothed.Rate.Should().BeApproximately(3 / 50.0, 1e-9);
    }

    [Fact]
    public void Two_periods_have_a_smooth_or_a_reason()
    {
        BinomialLevel.Fit([new(1, 3, 100), new(2, 4, 100)]).SigmaKind.Should().Be(SigmaKind.Zero);
        BinomialLevel.Fit([new(1, 20, 100), new(2, 40, 100)]).SigmaKind.Should().Be(SigmaKind.MostLikely);
        BinomialLevel.Fit([new(1, 0, 100), new(2, 50, 100)]).Reason.Should().Be(UndefinedReason.LevelTooUnsteady);
        BinomialLevel.Fit([new(1, 0, 100), new(2, 50, 100)], new BinomialLevelOptions { AverageOverSigma = true }).Reason.Should().BeNull();
    }

    [Fact]
    public void Filtered_figures_begin_where_the_counts_bound_the_rate()
    {
        var fit = BinomialLevel.Fit([new(1, 0, 50), new(2, 0, 50), new(3, 2, 50), new(4, 1, 50)], new BinomialLevelOptions { Sigma = 0.3 });
        fit.Points.Select(point => point.Filtered is null).Should().Equal(true, true, false, false);
        fit.Points[3].Filtered!.Value.Rate.Should().BeApproximately(fit.Points[3].Smoothed.Rate, 1e-10);
    }

    [Fact]
    public void What_cannot_be_smoothed_says_why_and_bad_figures_are_refused()
    {
        BinomialLevel.Fit([]).Reason.Should().Be(UndefinedReason.NoTrials);
        BinomialLevel.Fit([new(1, 0, 0)]).Reason.Should().Be(UndefinedReason.NoTrials);
        BinomialLevel.Fit([.. Enumerable.Range(0, 40).Select(week => new PeriodCount(week, week < 20 ? 100 : 50_000, 100_000))], new BinomialLevelOptions { Sigma = 1e-5 }).Reason.Should().Be(UndefinedReason.StepsTooSmall);
        FluentActions.Invoking(() => new PeriodCount(1, 3, 2)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new PeriodCount(1, double.NaN, 2)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => LevelStart.Beta(0, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => LevelStart.Normal(0, 0)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BinomialLevel.Fit([new(1, 1, 2)], new BinomialLevelOptions { Sigma = -1 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => BinomialLevel.Fit([new(1, 1, 2)], new BinomialLevelOptions { Confidence = 1 })).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Theory]
    [InlineData(0.05, 200, -3, 300, null)]
    [InlineData(0, 50, -5, 1826, null)]
    [InlineData(0.02, 500, -2, 1826, 0.02)]
    public void Five_years_of_days_are_smoothed(double wander, int tests, double level, int days, double? sigma)
    {
        var random = new Random(20261128);
        var counts = new PeriodCount[days];
        for (var day = 0; day < counts.Length; day++)
        {
            level = Math.Clamp(level + (wander * (random.NextDouble() + random.NextDouble() + random.NextDouble() + random.NextDouble() - 2) * Math.Sqrt(3)), -7, 1);
            var trials = day % 7 >= 5 ? 0 : tests;
            var events = Enumerable.Range(0, trials).Count(_ => random.NextDouble() < 1 / (1 + Math.Exp(-level)));
            counts[day] = new PeriodCount(day, events, trials);
        }

        var fit = BinomialLevel.Fit(counts, new BinomialLevelOptions { Sigma = sigma });
        fit.Reason.Should().BeNull();
        fit.Points.Should().HaveCount(days);
        if (wander > 0) fit.Sigma.Should().BeInRange(wander / 1.6, wander * 1.6);
        fit.Points.Should().OnlyContain(point => point.Smoothed.Band.Contains(point.Smoothed.Rate));
    }
}
