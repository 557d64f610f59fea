using System.Globalization;
using ScreenStats.Statistics.Tests.Heterogeneity;
using ScreenStats.Statistics.Tests.Trends.SlopeChanges;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.Weekdays;

namespace ScreenStats.Statistics.Tests.Trends.Weekdays;

public sealed class WeekdayComparisonTests
{
    private static readonly Dictionary<string, DispersionScale> Scales = new()
    {
        ["binomial"] = DispersionScale.Binomial, ["pearson"] = DispersionScale.Pearson, ["pearson-at-least-one"] = DispersionScale.PearsonAtLeastOne,
    };

    private static readonly Dictionary<string, WeekAdjustment> Adjustments = new() { ["conditional"] = WeekAdjustment.Conditional, ["terms"] = WeekAdjustment.WeekTerms, ["automatic"] = WeekAdjustment.Automatic };

    /// <summary>A few weeks of two to seven days, some without tests or events.</summary>
    private static readonly Gen<WeekdayCount[]> Drawn = Gen.Select(Gen.Int[2, 7], Gen.Int[2, 8], Gen.Int[0, 60].Array[56], Gen.Double[0, 1].Array[56]).Select((days, weeks, trials, parts) =>
        (WeekdayCount[])[.. Enumerable.Range(0, days * weeks).Select(i => new WeekdayCount(i / days, (DayOfWeek)(i % days), Math.Floor(parts[i] * parts[(i * 7) % 56] * trials[i]), trials[i]))]);

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("weekdays"), row =>
    {
        var pattern = WeekdayComparison.Compare(Read(row.Text("counts")), new WeekdayOptions { Adjustment = Adjustments[row.Text("adjustment")], Scale = Scales[row.Text("scale")] });
        return
        [
            .. GroupRows.Mismatches(row, "ratios", pattern.Weekdays.Select(day => day.Ratio.Value)), .. GroupRows.Mismatches(row, "errors", pattern.Weekdays.Select(day => day.StandardError)),
            .. GroupRows.Mismatches(row, "lower", pattern.Weekdays.Select(day => day.Ratio.Lower)), .. GroupRows.Mismatches(row, "upper", pattern.Weekdays.Select(day => day.Ratio.Upper)),
            row.Mismatch("likelihood_ratio", pattern.LikelihoodRatio), row.Mismatch("degrees_of_freedom", pattern.DegreesOfFreedom), row.Mismatch("residual_degrees", pattern.ResidualDegrees),
            row.Mismatch("dispersion", pattern.Dispersion), row.Mismatch("p_value", pattern.PValue),
        ];
    });

    [Fact]
    public void The_table_has_at_least_thirty_independent_rows_of_each_adjustment()
    {
        foreach (var kind in new[] { "conditional", "terms" }) ReferenceTable.Load("weekdays").Count(row => row.Kind == "independent" && row.Text("adjustment") == kind).Should().BeGreaterThanOrEqualTo(30, kind);
    }

    [Theory]
    [InlineData(WeekAdjustment.Conditional)]
    [InlineData(WeekAdjustment.WeekTerms)]
    public void Order_splitting_and_names_of_weeks_change_nothing_and_the_mean_of_the_days_is_one(WeekAdjustment adjustment) => Drawn.Sample(counts =>
    {
        var options = new WeekdayOptions { Adjustment = adjustment, Scale = DispersionScale.Binomial };
        var pattern = WeekdayComparison.Compare(counts, options);
        var other = WeekdayComparison.Compare([.. counts.Reverse().Select(count => new WeekdayCount(-count.Week, count.Weekday, count.Events, count.Trials)), new WeekdayCount(99, DayOfWeek.Monday, 0, 0)], options);
        other.Reason.Should().Be(pattern.Reason);
        pattern.Weekdays.Select(day => day.Weekday).Should().Equal(other.Weekdays.Select(day => day.Weekday));
        if (pattern.Reason is not null) return;
        Near(other.LikelihoodRatio!.Value, pattern.LikelihoodRatio!.Value).Should().BeTrue();
        var logs = pattern.Weekdays.Where(day => day.Ratio.IsDefined).Select(day => Math.Log(day.Ratio.Value!.Value)).ToList();
        logs.Sum().Should().BeApproximately(0, 1e-9);
        foreach (var (a, b) in pattern.Weekdays.Zip(other.Weekdays))
        {
            b.Ratio.Reason.Should().Be(a.Ratio.Reason);
            if (a.Ratio.IsDefined) (Near(b.Ratio.Value!.Value, a.Ratio.Value!.Value) && Near(b.StandardError!.Value, a.StandardError!.Value)).Should().BeTrue();
        }

        var split = WeekdayComparison.Compare([.. counts.SelectMany(count => new[]
        {
            new WeekdayCount(count.Week, count.Weekday, 0, Math.Floor((count.Trials - count.Events) / 2)),
            new WeekdayCount(count.Week, count.Weekday, count.Events, count.Trials - Math.Floor((count.Trials - count.Events) / 2)),
        })], options);
        Near(split.LikelihoodRatio!.Value, pattern.LikelihoodRatio!.Value).Should().BeTrue();
    }, iter: 60);

    [Theory]
    [InlineData(WeekAdjustment.Conditional)]
    [InlineData(WeekAdjustment.WeekTerms)]
    public void Events_and_the_others_change_places_and_the_ratios_turn_over(WeekAdjustment adjustment) => Drawn.Sample(counts =>
    {
        var options = new WeekdayOptions { Adjustment = adjustment, Scale = DispersionScale.Binomial };
        var pattern = WeekdayComparison.Compare(counts, options);
        var turned = WeekdayComparison.Compare([.. counts.Select(count => new WeekdayCount(count.Week, count.Weekday, count.Trials - count.Events, count.Trials))], options);
        if (pattern.Reason is null != turned.Reason is null) Assert.Fail("one has a reason");
        if (pattern.Reason is not null) return;
        Near(turned.PValue!.Value, pattern.PValue!.Value).Should().BeTrue();
        foreach (var (a, b) in pattern.Weekdays.Zip(turned.Weekdays))
        {
            b.Ratio.IsDefined.Should().Be(a.Ratio.IsDefined);
            if (a.Ratio.IsDefined) Near(1 / b.Ratio.Value!.Value, a.Ratio.Value!.Value).Should().BeTrue();
        }
    }, iter: 60);

    [Fact]
    public void Days_that_tell_events_apart_have_the_test_of_the_limit()
    {
        // Drawn by the test above: all of one day or none of the other in each week that compares them. The likelihood's limit is in closed form: the day that is whole or
        // empty adds nothing, the other its own rate. No difference: each week one rate.
        WeekdayCount[] counts = Read("0:Sunday:20/20 0:Monday:1/22 0:Tuesday:0/9 1:Sunday:0/30 1:Monday:0/34 1:Tuesday:0/5 3:Sunday:21/45 3:Monday:0/56 3:Tuesday:0/24");
        static double Log(double events, double trials) => (events * Math.Log(events / trials)) + ((trials - events) * Math.Log((trials - events) / trials));
        var limit = 2 * (Log(1, 22) + Log(21, 45) - Log(21, 51) - Log(21, 125));
        foreach (var turned in new[] { false, true })
        {
            WeekdayCount[] given = turned ? [.. counts.Select(count => new WeekdayCount(count.Week, count.Weekday, count.Trials - count.Events, count.Trials))] : counts;
            var pattern = WeekdayComparison.Compare(given, new WeekdayOptions { Adjustment = WeekAdjustment.WeekTerms, Scale = DispersionScale.Binomial });
            pattern.LikelihoodRatio.Should().BeApproximately(limit, 1e-9);
            pattern.PValue.Should().BeApproximately(Math.Exp(-limit / 2), 1e-9 * Math.Exp(-limit / 2), "chi-square with two degrees of freedom");
            pattern.Weekdays.Select(day => day.Ratio.Reason).Should().Equal(UndefinedReason.Separation, turned ? UndefinedReason.OddsRatioUnbounded : UndefinedReason.OddsRatioZero, UndefinedReason.Separation);
        }
    }

    [Fact]
    public void A_design_effect_divides_the_test_and_widens_the_errors()
    {
        var counts = Weeks(30, 400, [8, 9, 10, 11, 18]);
        var plain = WeekdayComparison.Compare(counts, new WeekdayOptions { Scale = DispersionScale.Binomial });
        var wide = WeekdayComparison.Compare(counts, new WeekdayOptions { Scale = DispersionScale.Binomial, DesignEffect = 4 });
        wide.LikelihoodRatio.Should().Be(plain.LikelihoodRatio);
        wide.VarianceFactor.Should().Be(4);
        wide.PValue.Should().BeGreaterThan(plain.PValue!.Value);
        wide.Weekdays[0].StandardError.Should().BeApproximately(2 * plain.Weekdays[0].StandardError!.Value, 1e-12);
        WeekdayComparison.Compare(counts, new WeekdayOptions { DesignEffect = 4 }).VarianceFactor.Should().Be(4, "these days differ by less than chance from week to week");
    }

    [Fact]
    public void A_day_without_events_has_no_ratio_and_yet_counts_in_the_test()
    {
        var pattern = WeekdayComparison.Compare(Weeks(20, 100, [5, 6, 0, 4]), new WeekdayOptions { Scale = DispersionScale.Binomial });
        pattern.Weekdays[2].Ratio.Reason.Should().Be(UndefinedReason.OddsRatioZero);
        pattern.Weekdays[2].Trials.Should().Be(2000);
        pattern.DegreesOfFreedom.Should().Be(3);
        pattern.PValue.Should().BeLessThan(1e-10);
        pattern.Weekdays[0].Ratio.IsDefined.Should().BeTrue();

        // The limit of ever fewer events.
        var nearly = WeekdayComparison.Compare([.. Weeks(20, 100, [5, 6, 0, 4]).Select(c => c is { Weekday: DayOfWeek.Wednesday } ? new WeekdayCount(c.Week, c.Weekday, 1e-4, 100) : c)], new WeekdayOptions { Scale = DispersionScale.Binomial, Adjustment = WeekAdjustment.WeekTerms });
        var terms = WeekdayComparison.Compare(Weeks(20, 100, [5, 6, 0, 4]), new WeekdayOptions { Scale = DispersionScale.Binomial, Adjustment = WeekAdjustment.WeekTerms });
        nearly.LikelihoodRatio.Should().BeApproximately(terms.LikelihoodRatio!.Value, 0.1);
    }

    [Fact]
    public void Weeks_taken_given_their_events_and_with_terms_agree_where_events_are_many()
    {
        var counts = Weeks(12, 400, [130, 140, 145, 120, 150, 135, 140]);
        var given = WeekdayComparison.Compare(counts, new WeekdayOptions { Adjustment = WeekAdjustment.Conditional, Scale = DispersionScale.Binomial });
        var terms = WeekdayComparison.Compare(counts, new WeekdayOptions { Adjustment = WeekAdjustment.WeekTerms, Scale = DispersionScale.Binomial });
        terms.ConditionalWeeks.Should().Be(0);
        given.ConditionalWeeks.Should().Be(12);
        foreach (var (a, b) in given.Weekdays.Zip(terms.Weekdays)) b.Ratio.Value.Should().BeApproximately(a.Ratio.Value!.Value, 2e-3);
        terms.PValue.Should().BeApproximately(given.PValue!.Value, 1e-3);
        WeekdayComparison.Compare(counts).ConditionalWeeks.Should().Be(0);
        WeekdayComparison.Compare(Weeks(12, 900, [8, 3])).ConditionalWeeks.Should().Be(12);
    }

    [Fact]
    public void With_one_event_a_week_a_term_for_the_week_exaggerates_and_the_condition_does_not()
    {
        // Twice the odds on the second of two days: as in matched pairs the term gives the square.
        WeekdayCount[] counts = [.. Enumerable.Range(0, 300).SelectMany(week => new[]
        {
            new WeekdayCount(week, DayOfWeek.Monday, week % 3 == 0 ? 1 : 0, 1), new WeekdayCount(week, DayOfWeek.Tuesday, week % 3 == 0 ? 0 : 1, 1),
        })];
        double Odds(WeekAdjustment adjustment) => Math.Pow(WeekdayComparison.Compare(counts, new WeekdayOptions { Adjustment = adjustment, Scale = DispersionScale.Binomial }).Weekdays[1].Ratio.Value!.Value, 2);
        Odds(WeekAdjustment.Conditional).Should().BeApproximately(2, 1e-9);
        Odds(WeekAdjustment.WeekTerms).Should().BeApproximately(4, 1e-9);
    }

    [Fact]
    public void A_wave_that_met_the_days_unequally_is_not_taken_for_a_pattern()
    {
        // Mondays were tested mostly while many were positive.
        WeekdayCount[] counts = [.. Enumerable.Range(0, 20).SelectMany(week => new[]
        {
            new WeekdayCount(week, DayOfWeek.Monday, week < 10 ? 40 : 1, week < 10 ? 400 : 100), new WeekdayCount(week, DayOfWeek.Thursday, week < 10 ? 10 : 4, week < 10 ? 100 : 400),
        })];
        var pattern = WeekdayComparison.Compare(counts);
        (pattern.Weekdays[0].Events / pattern.Weekdays[0].Trials).Should().BeGreaterThan(2 * pattern.Weekdays[1].Events / pattern.Weekdays[1].Trials);
        pattern.PValue.Should().BeGreaterThan(0.9);
    }

    [Fact]
    public void Limits_cover_and_the_test_is_seldom_wrong_with_five_events_a_week_in_a_wave()
    {
        double[] effects = [0.3, 0, 0, -0.2, -0.1, 0.4, -0.4];
        int covered = 0, of = 0, wrong = 0;
        foreach (var scale in new[] { 1.0, 0 })
        {
            for (var replicate = 0; replicate < 300; replicate++)
            {
                WeekdayCount[] counts = [.. SlopeStudy.Draw(26, replicate, [.. Enumerable.Range(0, 26 * 7).Select(i => new TimedCount(i, 15 / (1 + Math.Exp(3 - Math.Sin(i / 30.0) - (scale * effects[i % 7]))), 15))], 0)
                    .Select((count, i) => new WeekdayCount(i / 7, (DayOfWeek)(i % 7), count.Events, count.Trials))];
                var pattern = WeekdayComparison.Compare(counts, new WeekdayOptions { Scale = DispersionScale.Binomial });
                if (scale == 0 && pattern.PValue < 0.05) wrong++;
                foreach (var day in pattern.Weekdays.Where(day => scale == 1 && day.Ratio.IsDefined))
                {
                    of++;
                    if (day.Ratio.Interval!.Value.Contains(Math.Exp(effects[(int)day.Weekday]))) covered++;
                }
            }
        }

        // Three standard errors of 300 series either way.
        ((double)covered / of).Should().BeInRange(0.93, 0.97);
        (wrong / 300.0).Should().BeInRange(0.012, 0.088);
    }

    [Fact]
    public void What_cannot_be_compared_says_why()
    {
        WeekdayComparison.Compare([]).Reason.Should().Be(UndefinedReason.NoTrials);
        WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 0, 10), new(1, DayOfWeek.Friday, 0, 10)]).Reason.Should().Be(UndefinedReason.NoEvents);
        WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 10, 10), new(1, DayOfWeek.Friday, 10, 10)]).Reason.Should().Be(UndefinedReason.OnlyEvents);
        WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 1, 10), new(2, DayOfWeek.Friday, 3, 10)]).Reason.Should().Be(UndefinedReason.NoSharedStratum);
        WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 1, 10), new(1, DayOfWeek.Friday, 3, 10), new(2, DayOfWeek.Tuesday, 2, 10), new(2, DayOfWeek.Sunday, 3, 10)]).Reason.Should().Be(UndefinedReason.NoSharedStratum);
        WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 1, 10), new(1, DayOfWeek.Friday, 3, 10)]).Reason.Should().Be(UndefinedReason.NoDegreesOfFreedom);
        WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 1, 10), new(1, DayOfWeek.Friday, 3, 10)], new WeekdayOptions { Scale = DispersionScale.Binomial }).Reason.Should().BeNull();
        var whole = WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 0, 10), new(1, DayOfWeek.Friday, 10, 10)], new WeekdayOptions { Scale = DispersionScale.Binomial });
        whole.Weekdays.Select(day => day.Ratio.Reason).Should().Equal(UndefinedReason.OddsRatioZero, UndefinedReason.OddsRatioUnbounded);
        whole.PValue.Should().BeLessThan(1e-4);
        FluentActions.Invoking(() => WeekdayComparison.Compare([new(1, DayOfWeek.Monday, 1.5, 10), new(1, DayOfWeek.Friday, 3, 10)], new WeekdayOptions { Adjustment = WeekAdjustment.Conditional })).Should().Throw<ArgumentException>();
        FluentActions.Invoking(() => WeekdayComparison.Compare([], new WeekdayOptions { DesignEffect = 0.5 })).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new WeekdayCount(1, (DayOfWeek)9, 1, 10)).Should().Throw<ArgumentOutOfRangeException>();
    }

    private static WeekdayCount[] Weeks(int weeks, double trials, double[] events) =>
        [.. Enumerable.Range(0, weeks).SelectMany(week => events.Select((count, day) => new WeekdayCount(week, (DayOfWeek)((day + 1) % 7), count, trials)))];

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-7 * (1e-3 + Math.Abs(a) + Math.Abs(b));

    private static WeekdayCount[] Read(string text) => [.. text.Split(' ').Select(part =>
    {
        var fields = part.Split(':', '/');
        double Number(int i) => double.Parse(fields[i], NumberStyles.Float, CultureInfo.InvariantCulture);
        return new WeekdayCount((int)Number(0), Enum.Parse<DayOfWeek>(fields[1]), Number(2), Number(3));
    })];
}
