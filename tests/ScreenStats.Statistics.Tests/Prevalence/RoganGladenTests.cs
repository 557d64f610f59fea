using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Statistics.Tests.Prevalence;

public sealed class RoganGladenTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("corrected-prevalence"), row =>
        {
            var result = RoganGladen.Estimate(
                row.Count("successes"), row.Count("trials"), Statements.Read(row.Text("sensitivity")), Statements.Read(row.Text("specificity")), row.Number("confidence"));
            return
            [
                row.Mismatch("unclipped", result.Unclipped), row.Mismatch("standard_error", result.StandardError), row.Mismatch("unclipped_lower", result.UnclippedInterval?.Lower),
                row.Mismatch("unclipped_upper", result.UnclippedInterval?.Upper), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper),
            ];
        });

    [Fact]
    public void Fewer_positives_than_the_specificity_allows_give_zero_with_the_remark()
    {
        var result = RoganGladen.Estimate(2, 1000, AccuracyStatement.FromCounts(160, 200), AccuracyStatement.FromCounts(995, 1000));
        result.Value.Should().Be(0);
        result.Unclipped.Should().BeNegative();
        result.ApparentBelowFalsePositiveRate.Should().BeTrue();
        result.ApparentAboveSensitivity.Should().BeFalse();
        result.Lower.Should().Be(0);
    }

    [Fact]
    public void More_positives_than_the_sensitivity_allows_give_one_with_the_remark()
    {
        var result = RoganGladen.Estimate(950, 1000, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.99));
        result.Value.Should().Be(1);
        result.ApparentAboveSensitivity.Should().BeTrue();
    }

    [Theory]
    [InlineData(0, 0, 0.8, 0.99, UndefinedReason.NoTrials)]
    [InlineData(5, 10, 0.5, 0.5, UndefinedReason.TestNoBetterThanChance)]
    [InlineData(5, 10, 0.2, 0.3, UndefinedReason.TestNoBetterThanChance)]
    public void What_cannot_be_corrected_is_undefined_and_says_why(long successes, long trials, double sensitivity, double specificity, UndefinedReason reason)
    {
        var result = RoganGladen.Estimate(successes, trials, AccuracyStatement.Exact(sensitivity), AccuracyStatement.Exact(specificity));
        result.IsDefined.Should().BeFalse();
        result.Reason.Should().Be(reason);
        result.Interval.Should().BeNull();
        result.ApparentBelowFalsePositiveRate.Should().BeFalse();
        result.ToEstimate().Should().Be(Estimate.Undefined(reason));
    }

    [Fact]
    public void A_perfect_test_corrects_nothing() => Gen.Select(Gen.Long[1, 5000], Gen.Double[0, 1]).Sample((trials, share) =>
    {
        var successes = (long)(trials * share);
        var result = RoganGladen.Estimate(successes, trials, AccuracyStatement.Exact(1), AccuracyStatement.Exact(1));
        return Math.Abs(result.Value!.Value - ((double)successes / trials)) < 1e-15;
    });

    [Fact]
    public void Value_and_limits_are_finite_ordered_and_in_the_unit_interval() =>
        Gen.Select(Gen.Long[1, 5000], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Long[1, 500]).Sample((trials, share, se, sp, n) =>
        {
            var result = RoganGladen.Estimate((long)(trials * share), trials, AccuracyStatement.FromCounts((long)(se * n), n), AccuracyStatement.FromCounts((long)(sp * n), n));
            return result.IsDefined
                ? 0 <= result.Lower && result.Lower <= result.Value && result.Value <= result.Upper && result.Upper <= 1 && double.IsFinite(result.StandardError!.Value)
                : result.Reason == UndefinedReason.TestNoBetterThanChance;
        });

    [Fact]
    public void The_design_effect_multiplies_the_variance_of_the_apparent_prevalence_only()
    {
        var plain = RoganGladen.Estimate(50, 3330, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.995));
        var widened = RoganGladen.Estimate(50, 3330, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.995), designEffect: 4);
        widened.StandardError.Should().BeApproximately(2 * plain.StandardError!.Value, 1e-15);
    }

    [Fact]
    public void The_share_confirmed_is_corrected_for_the_confirmatory_tests_own_errors()
    {
        // By hand: (641/1103 + 0.999 - 1) / (0.95 + 0.999 - 1)
        RoganGladen.PositivePredictiveValue(641, 1103, AccuracyStatement.Exact(0.95), AccuracyStatement.Exact(0.999)).Value
            .Should().BeApproximately(((641.0 / 1103) - 0.001) / 0.949, 1e-14);
    }
}
