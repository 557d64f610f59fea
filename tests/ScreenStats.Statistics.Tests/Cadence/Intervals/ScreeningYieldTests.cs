using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Tests.Cadence.Intervals;

public sealed class ScreeningYieldTests
{
    private static readonly Gen<InfectionWindows> Windows = Gen.Select(Gen.Double[0, 10], Gen.Double[0, 20], Gen.Double[0, 10], Gen.Double[0, 20])
        .Select((a, w, i, l) => new InfectionWindows(a, a + w, i, i + l));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("screening-yields"), row =>
    {
        var routine = new ScreeningRoutine(row.Number("every"), row.Number("sensitivity"), Enum.Parse<ScreenTiming>(row.Text("timing")));
        var windows = new InfectionWindows(
            row.Number("detectable_from"), row.Number("detectable_to"), row.Number("infectious_from"), row.Number("infectious_to"));
        var delay = row.Number("delay");
        return
        [
            row.Mismatch("detected", ScreeningYield.DetectionProbability(routine, windows)),
            row.Mismatch("screens", ScreeningYield.ExpectedScreens(routine, windows)),
            row.Mismatch("isolated", row.Has("age") ? ScreeningYield.IsolatedByAge(routine, windows, delay, row.Number("age")) : null),
            row.Mismatch("removed", ScreeningYield.InfectiousDaysRemoved(routine, windows, delay)),
            row.Mismatch("fraction", ScreeningYield.FractionRemoved(routine, windows, delay).Value),
            row.Mismatch("wait", ScreeningYield.MeanWait(routine).Value),
        ];
    });

    [Fact]
    public void More_frequent_screens_never_find_less_or_take_away_fewer_days() =>
        Gen.Select(Windows, Gen.Double[0.05, 40], Gen.Double[1, 5], Gen.Double[0, 1], Gen.Double[0, 6], Gen.Bool).Sample((windows, every, longer, s, delay, random) =>
        {
            var timing = random ? ScreenTiming.AtRandom : ScreenTiming.Regular;
            var often = new ScreeningRoutine(every, s, timing);
            var seldom = new ScreeningRoutine(every * longer, s, timing);
            return ScreeningYield.InfectiousDaysRemoved(often, windows, delay) >= ScreeningYield.InfectiousDaysRemoved(seldom, windows, delay) - 1e-11
                && ScreeningYield.DetectionProbability(often, windows) >= ScreeningYield.DetectionProbability(seldom, windows) - 1e-12;
        });

    [Fact]
    public void A_better_test_or_a_faster_result_never_takes_away_fewer_days_and_all_stay_within_bounds() =>
        Gen.Select(Windows, Gen.Double[-4, 3].Select(e => Math.Pow(10, e)), Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 6]).Sample((windows, every, s, share, delay) =>
        {
            var routine = new ScreeningRoutine(every, s);
            var worse = new ScreeningRoutine(every, s * share);
            var days = ScreeningYield.InfectiousDaysRemoved(routine, windows, delay);
            var found = ScreeningYield.DetectionProbability(routine, windows);
            return days >= ScreeningYield.InfectiousDaysRemoved(worse, windows, delay) - 1e-11
                && days <= ScreeningYield.InfectiousDaysRemoved(routine, windows, delay * share) + 1e-11
                && days >= 0 && days <= windows.InfectiousDays && found is >= 0 and <= 1
                && ScreeningYield.ExpectedScreens(routine, windows) <= (windows.DetectableDays / every) + 1e-9
                && ScreeningYield.IsolatedByAge(routine, windows, delay, windows.DetectableTo + delay) >= found - 1e-9;
        });

    [Fact]
    public void Regular_screens_take_away_more_than_as_many_at_random() =>
        Gen.Select(Gen.Double[0.5, 20], Gen.Double[0.05, 40], Gen.Double[0, 1]).Sample((days, every, s) =>
            ScreeningYield.InfectiousDaysRemoved(new ScreeningRoutine(every, s), InfectionWindows.Same(days), 0)
            >= ScreeningYield.InfectiousDaysRemoved(new ScreeningRoutine(every, s, ScreenTiming.AtRandom), InfectionWindows.Same(days), 0) - 1e-11);

    [Fact]
    public void Screens_without_pause_take_away_all_that_the_delay_leaves_and_rare_ones_nothing()
    {
        var windows = new InfectionWindows(2, 12, 3, 11);
        foreach (var s in (double[])[0.2, 1])
        {
            ScreeningYield.InfectiousDaysRemoved(new ScreeningRoutine(1e-6, s), windows, 0).Should().BeApproximately(8, 1e-4);
            ScreeningYield.InfectiousDaysRemoved(new ScreeningRoutine(1e-6, s), windows, 3).Should().BeApproximately(6, 1e-4);
            ScreeningYield.DetectionProbability(new ScreeningRoutine(1e-6, s), windows).Should().BeApproximately(1, 1e-12);
            ScreeningYield.InfectiousDaysRemoved(new ScreeningRoutine(1e9, s), windows, 0).Should().BeInRange(0, 1e-7);
        }
    }

    [Fact]
    public void Extremes_give_what_they_must()
    {
        var windows = new InfectionWindows(3, 10, 2, 8);
        ScreeningYield.DetectionProbability(new ScreeningRoutine(1, 0), windows).Should().Be(0);
        ScreeningYield.InfectiousDaysRemoved(new ScreeningRoutine(1, 0), windows, 0).Should().Be(0);
        ScreeningYield.ExpectedScreens(new ScreeningRoutine(2, 0), windows).Should().Be(3.5);
        ScreeningYield.MeanWait(new ScreeningRoutine(2, 0)).Reason.Should().Be(UndefinedReason.NeverDetected);
        ScreeningYield.MeanWait(new ScreeningRoutine(2, 1e-300)).Reason.Should().Be(UndefinedReason.TooLarge);
        ScreeningYield.DetectionProbability(new ScreeningRoutine(7, 1), windows).Should().Be(1);
        ScreeningYield.DetectionProbability(new ScreeningRoutine(70, 1), windows).Should().BeApproximately(0.1, 1e-15, "an interval longer than the infection finds its share");
        ScreeningYield.InfectiousDaysRemoved(new ScreeningRoutine(1, 1), windows, 6).Should().Be(0, "the delay outlasts the infectious time");
        ScreeningYield.FractionRemoved(new ScreeningRoutine(1, 1), new InfectionWindows(3, 10, 5, 5), 0).Reason.Should().Be(UndefinedReason.NoInfectiousTime);
        ScreeningYield.DetectionProbability(new ScreeningRoutine(1, 1), new InfectionWindows(3, 3, 2, 8)).Should().Be(0);
        ScreeningYield.DetectionProbability(new ScreeningRoutine(1, 1e-18), windows).Should().BeApproximately(7e-18, 1e-24, "no digit is lost at a small sensitivity");
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var routine = new ScreeningRoutine(1, 0.5);
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new ScreeningRoutine(0, 0.5), "everyDays"), (() => _ = new ScreeningRoutine(double.NaN, 0.5), "everyDays"), (() => _ = new ScreeningRoutine(2e9, 0.5), "everyDays"),
            (() => _ = new ScreeningRoutine(1, 1.5), "sensitivity"), (() => _ = new ScreeningRoutine(1, 0.5, (ScreenTiming)9), "timing"),
            (() => _ = new InfectionWindows(-1, 3, 0, 2), "detectableFrom"), (() => _ = new InfectionWindows(4, 3, 0, 2), "detectableTo"),
            (() => _ = new InfectionWindows(1, 3, 4, 2), "infectiousTo"), (() => InfectionWindows.Same(double.PositiveInfinity), "days"),
            (() => ScreeningYield.InfectiousDaysRemoved(routine, InfectionWindows.Same(3), -1), "delayDays"),
            (() => ScreeningYield.IsolatedByAge(routine, InfectionWindows.Same(3), 0, -1), "age"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }
}
