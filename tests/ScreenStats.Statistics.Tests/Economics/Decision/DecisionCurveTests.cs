using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Economics.Decision;

namespace ScreenStats.Statistics.Tests.Economics.Decision;

public sealed class DecisionCurveTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("decision-curves"), row =>
    {
        double[] thresholds = [row.Number("threshold")];
        if (row.Has("screens"))
        {
            var counts = new DecisionCounts(row.Count("true_positives"), row.Count("false_positives"), row.Count("screens"), row.Count("infected"));
            var counted = DecisionCurve.Of(counts, thresholds, row.Number("confidence")).Single();
            return new[]
            {
                row.Mismatch("screen", counted.Screen.Value), row.Mismatch("lower", counted.Screen.Lower), row.Mismatch("upper", counted.Screen.Upper), row.Mismatch("all", counted.TreatAll.Value),
                row.Mismatch("all_lower", counted.TreatAll.Lower), row.Mismatch("all_upper", counted.TreatAll.Upper),
            };
        }

        var (p, s, sp) = (row.Number("prevalence"), row.Number("sensitivity"), row.Number("specificity"));
        var stated = DecisionCurve.Stated(p, s, sp, thresholds).Single();
        var useful = DecisionCurve.UsefulThresholds(p, s, sp);
        return new[]
        {
            row.Mismatch("screen", stated.Screen.Value), row.Mismatch("all", stated.TreatAll.Value), row.Mismatch("useful_from", useful?.Lower), row.Mismatch("useful_to", useful?.Upper),
        };
    });

    [Fact]
    public void Every_row_of_the_table_of_clusters_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("decision-curves-clustered"), row =>
    {
        var (screens, confidence) = (row.Count("screens"), row.Number("confidence"));
        var point = DecisionCurve.Widened(
            WidenedInterval.Wilson(row.Count("true_positives"), screens, row.Number("found_effect"), row.Count("found_clusters"), confidence),
            WidenedInterval.Wilson(row.Count("false_positives"), screens, row.Number("alarm_effect"), row.Count("alarm_clusters"), confidence), [row.Number("threshold")]).Single();
        return new[] { row.Mismatch("screen", point.Screen.Value), row.Mismatch("lower", point.Screen.Lower), row.Mismatch("upper", point.Screen.Upper) };
    });

    [Fact]
    public void A_design_effect_widens_the_limits_and_none_leaves_them_as_they_are() =>
        Gen.Select(Gen.Long[0, 300], Gen.Long[0, 300], Gen.Long[1, 3000], Gen.Double[0, 0.95], Gen.Double[1, 20], Gen.Double[1, 20]).Sample((tp, fp, others, threshold, first, second) =>
        {
            var screens = tp + fp + others;
            Estimate Of(double one, double two) => DecisionCurve.Widened(WidenedInterval.Wilson(tp, screens, one, 200), WidenedInterval.Wilson(fp, screens, two, 200), [threshold]).Single().Screen;
            var (plain, none, wide) = (DecisionCurve.Of(new DecisionCounts(tp, fp, screens), [threshold]).Single().Screen, Of(1, 1), Of(first, second));
            return Math.Abs(none.Lower!.Value - plain.Lower!.Value) < 1e-12 && Math.Abs(none.Upper!.Value - plain.Upper!.Value) < 1e-12
                && wide.Value == plain.Value && wide.Lower <= plain.Lower + 1e-12 && wide.Upper >= plain.Upper - 1e-12;
        });

    [Fact]
    public void Shares_that_are_not_of_the_same_screens_are_refused()
    {
        var found = WidenedInterval.Wilson(5, 100, 1, 30);
        foreach (var alarmed in new[] { WidenedInterval.Wilson(2, 99, 1, 30), WidenedInterval.Wilson(96, 100, 1, 30), WidenedInterval.Wilson(2, 100, 1, 30, 0.9) })
            ((Action)(() => DecisionCurve.Widened(found, alarmed, [0.1]))).Should().Throw<ArgumentException>().WithParameterName("alarmed");
        DecisionCurve.Widened(found, WidenedInterval.Wilson(95, 100, 1, 30), [0.1]).Single().TreatAll.Reason.Should().Be(UndefinedReason.InfectedUnknown);
        DecisionCurve.Widened(WidenedInterval.Wilson(0, 0, 1, 0), WidenedInterval.Wilson(0, 0, 1, 0), [0.1]).Single().Screen.Reason.Should().Be(UndefinedReason.NoTrials);
    }

    [Fact]
    public void Within_the_useful_thresholds_the_screen_is_best_and_outside_it_is_not() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 0.99]).Sample((p, s, sp, threshold) =>
        {
            var point = DecisionCurve.Stated(p, s, sp, [threshold]).Single();
            var useful = DecisionCurve.UsefulThresholds(p, s, sp);
            var inside = useful is { } range && threshold > range.Lower + 1e-9 && threshold < range.Upper - 1e-9;
            var outside = useful is not { } around || threshold < around.Lower - 1e-9 || threshold > around.Upper + 1e-9;
            return (!inside || point.Best == DecisionPolicy.Screen) && (!outside || point.Screen.Value <= Math.Max(point.TreatAll.Value.GetValueOrDefault(), 0) + 1e-9);
        });

    [Fact]
    public void Limits_stand_around_the_net_benefit_and_widen_with_confidence() =>
        Gen.Select(Gen.Long[0, 300], Gen.Long[0, 300], Gen.Long[1, 3000], Gen.Double[0, 0.95], Gen.Double[0.5, 0.99]).Sample((tp, fp, others, threshold, confidence) =>
        {
            var counts = new DecisionCounts(tp, fp, tp + fp + others, tp);
            var (point, wider) = (DecisionCurve.Of(counts, [threshold], confidence).Single(), DecisionCurve.Of(counts, [threshold], 0.995).Single());
            return point.Screen.Interval is { } limits && limits.Contains(point.Screen.Value!.Value) && wider.Screen.Lower <= limits.Lower && wider.Screen.Upper >= limits.Upper
                && point.TreatAll.Lower <= point.TreatAll.Value && point.TreatAll.Value <= point.TreatAll.Upper;
        });

    [Fact]
    public void The_limits_hold_the_truth_as_often_as_they_say()
    {
        // Exact: every pair of counts of a multinomial with 60 screens, summed; three thresholds and three truths.
        const int Screens = 60;
        foreach (var (p, q) in new[] { (0.05, 0.05), (0.2, 0.1), (0.02, 0.15) })
        {
            foreach (var threshold in new[] { 0.1, 0.3, 0.5 })
            {
                var weight = threshold / (1 - threshold);
                double held = 0;
                for (var tp = 0; tp <= Screens; tp++)
                {
                    for (var fp = 0; fp + tp <= Screens; fp++)
                    {
                        var chance = Math.Exp(LogFactorial(Screens) - LogFactorial(tp) - LogFactorial(fp) - LogFactorial(Screens - tp - fp)
                            + (tp * Math.Log(p)) + (fp * Math.Log(q)) + ((Screens - tp - fp) * Math.Log(1 - p - q)));
                        var limits = DecisionCurve.Of(new DecisionCounts(tp, fp, Screens), [threshold]).Single().Screen.Interval!.Value;
                        if (limits.Contains(p - (weight * q))) held += chance;
                    }
                }

                held.Should().BeInRange(0.925, 0.99, $"shares {p} and {q}, threshold {threshold}");
            }
        }
    }

    [Fact]
    public void Counts_and_shares_that_agree_give_the_same_curve()
    {
        double[] thresholds = [0, 0.01, 0.1, 0.4];
        var counted = DecisionCurve.Of(new DecisionCounts(54, 94, 10_000, 90), thresholds);
        var stated = DecisionCurve.Stated(0.009, 0.6, 1 - (94 / 9910.0), thresholds);
        foreach (var (left, right) in counted.Zip(stated))
        {
            left.Screen.Value.Should().BeApproximately(right.Screen.Value!.Value, 1e-12);
            left.TreatAll.Value.Should().BeApproximately(right.TreatAll.Value!.Value, 1e-12);
            left.Best.Should().Be(right.Best);
        }

        DecisionCurve.UsefulThresholds(0.009, 0.6, 0.99)!.Value.Upper.Should().Be(PredictiveValue.Positive(0.6, 0.99, 0.009).Value);
    }

    [Fact]
    public void What_is_not_known_has_a_reason()
    {
        var point = DecisionCurve.Of(new DecisionCounts(5, 2, 100), [0.1]).Single();
        point.TreatAll.Reason.Should().Be(UndefinedReason.InfectedUnknown);
        point.Best.Should().Be(DecisionPolicy.Screen);
        var nobody = DecisionCurve.Of(new DecisionCounts(0, 0, 0, 0), [0.1]).Single();
        (nobody.Screen.Reason, nobody.TreatAll.Reason, nobody.Best).Should().Be((UndefinedReason.NoTrials, UndefinedReason.NoTrials, DecisionPolicy.TreatNone));
        DecisionCurve.UsefulThresholds(0.1, 0.3, 0.6).Should().BeNull("a positive makes infection less likely");
        DecisionCurve.UsefulThresholds(0.1, 1, 0).Should().BeNull("no screen is negative");
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => DecisionCurve.Stated(2, 1, 1, [0]), "prevalence"), (() => DecisionCurve.Stated(0, 1, 1, [1]), "threshold"), (() => DecisionCurve.Of(default, [0.1], 1), "confidence"),
            (() => _ = new DecisionCounts(-1, 0, 1), "truePositives"), (() => _ = new DecisionCounts(1, 1, 1), "screens"), (() => _ = new DecisionCounts(1, 1, 5, 5), "infected"),
            (() => DecisionCurve.UsefulThresholds(0.1, 2, 1), "sensitivity"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }

    private static double LogFactorial(int n) => Enumerable.Range(1, n).Sum(k => Math.Log(k));
}
