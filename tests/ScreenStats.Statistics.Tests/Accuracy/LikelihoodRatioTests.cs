using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Statistics.Tests.Accuracy;

public sealed class LikelihoodRatioTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("likelihood-ratios"), row =>
        {
            var counts = new DiagnosticCounts(row.Count("true_positive"), row.Count("false_negative"), row.Count("false_positive"), row.Count("true_negative"));
            var positive = row.Text("measure") == "positive";
            var result = positive ? LikelihoodRatio.Positive(counts, row.Number("confidence")) : LikelihoodRatio.Negative(counts, row.Number("confidence"));
            var (sensitivity, specificity) = (counts.Sensitivity()!.Value, counts.Specificity()!.Value);
            var point = positive ? LikelihoodRatio.Positive(sensitivity, specificity) : LikelihoodRatio.Negative(sensitivity, specificity);
            return [row.Mismatch("value", result.Value), row.Mismatch("value", point.Value), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void Seventy_four_in_each_group_put_the_lower_limit_above_two_as_the_paper_plans()
    {
        // Simel et al. 1991, planning example from memory: sensitivity 0.80, specificity 0.73, about 74 per group. Counts as real numbers there.
        LikelihoodRatio.Positive(new DiagnosticCounts(80, 20, 27, 73)).Value.Should().BeApproximately(2.963, 5e-4);
        LikelihoodRatio.Positive(new DiagnosticCounts(80, 20, 27, 73)).Lower.Should().BeGreaterThan(2);
    }

    [Fact]
    public void A_ratio_without_upper_bound_is_undefined_and_says_why()
    {
        LikelihoodRatio.Positive(new DiagnosticCounts(113, 63, 0, 651)).Reason.Should().Be(UndefinedReason.NoFalsePositives);
        LikelihoodRatio.Positive(new DiagnosticCounts(0, 63, 0, 651)).Reason.Should().Be(UndefinedReason.NoPositiveResultPossible);
        LikelihoodRatio.Negative(new DiagnosticCounts(3, 2, 5, 0)).Reason.Should().Be(UndefinedReason.NoTrueNegatives);
        LikelihoodRatio.Negative(new DiagnosticCounts(3, 0, 5, 0)).Reason.Should().Be(UndefinedReason.NoNegativeResultPossible);
        LikelihoodRatio.Positive(0.8, 1).Reason.Should().Be(UndefinedReason.SpecificityOfOne);
        LikelihoodRatio.Positive(AccuracyStatement.Exact(0.8), AccuracyStatement.FromCounts(40, 40)).Reason.Should().Be(UndefinedReason.NoFalsePositives);
        LikelihoodRatio.Negative(AccuracyStatement.Exact(0.8), AccuracyStatement.FromCounts(0, 40)).Reason.Should().Be(UndefinedReason.NoTrueNegatives);
        LikelihoodRatio.Positive(0, 1).Reason.Should().Be(UndefinedReason.NoPositiveResultPossible);
        LikelihoodRatio.Negative(0.8, 0).Reason.Should().Be(UndefinedReason.SpecificityOfZero);
        LikelihoodRatio.Negative(1, 0).Reason.Should().Be(UndefinedReason.NoNegativeResultPossible);
        LikelihoodRatio.Positive(new DiagnosticCounts(0, 0, 1, 1)).Reason.Should().Be(UndefinedReason.NobodyWithTheCondition);
        LikelihoodRatio.Negative(new DiagnosticCounts(1, 1, 0, 0)).Reason.Should().Be(UndefinedReason.NobodyWithoutTheCondition);
    }

    /// <summary>scipy 1.10.1: the score statistic at the restricted likelihood's maximum (root of its derivative), inverted by brentq; as a ratio of proportions the tables two-proportions*.csv hold more.</summary>
    [Theory]
    [InlineData(113, 63, 651, 0.95, 109.43959166373746)]
    [InlineData(61, 36, 400, 0.95, 66.09593601379558)]
    [InlineData(8, 2, 25, 0.9, 8.126194381576411)]
    [InlineData(1, 30, 5000, 0.99, 24.31363575878456)]
    [InlineData(240, 178, 375, 0.95, 56.619521100942414)]
    [InlineData(19, 1, 3, 0.8, 2.6808420425308195)]
    public void Without_a_false_positive_the_lower_limit_of_the_score_interval_remains(long truePositive, long falseNegative, long trueNegative, double confidence, double lower)
    {
        var positive = LikelihoodRatio.Positive(new DiagnosticCounts(truePositive, falseNegative, 0, trueNegative), confidence);
        (positive.Value, positive.Interval, positive.Upper, positive.Reason, positive.Method).Should().Be((null, null, null, UndefinedReason.NoFalsePositives, "koopman"));
        positive.Lower.Should().BeApproximately(lower, lower * 1e-8);
        positive.Confidence.Should().Be(confidence);
        var negative = LikelihoodRatio.Negative(new DiagnosticCounts(falseNegative, truePositive, trueNegative, 0), confidence);
        (negative.Reason, negative.Lower).Should().Be((UndefinedReason.NoTrueNegatives, positive.Lower));
    }

    [Fact]
    public void Limits_are_finite_and_around_the_ratio_for_any_counts() => Gen.Long[0, 40].Array[4].Sample(c =>
    {
        var counts = new DiagnosticCounts(c[0], c[1], c[2], c[3]);
        return new[] { LikelihoodRatio.Positive(counts), LikelihoodRatio.Negative(counts) }
            .All(result => result.IsDefined ? result.Lower >= 0 && result.Interval!.Value.Contains(result.Value!.Value) : result.Reason is not null);
    });

    [Fact]
    public void The_negative_ratio_is_the_positive_one_with_results_swapped() => Gen.Long[1, 400].Array[4].Sample(c =>
        LikelihoodRatio.Negative(new DiagnosticCounts(c[0], c[1], c[2], c[3])) == LikelihoodRatio.Positive(new DiagnosticCounts(c[1], c[0], c[3], c[2])));

    [Fact]
    public void Statements_by_counts_give_what_the_counts_give() => Gen.Long[0, 40].Array[4].Sample(c =>
    {
        if (c[0] + c[1] == 0 || c[2] + c[3] == 0) return true;
        var counts = new DiagnosticCounts(c[0], c[1], c[2], c[3]);
        var (sensitivity, specificity) = (counts.Sensitivity()!, counts.Specificity()!);
        return LikelihoodRatio.Positive(sensitivity, specificity) == LikelihoodRatio.Positive(counts) && LikelihoodRatio.Negative(sensitivity, specificity) == LikelihoodRatio.Negative(counts);
    });

    [Fact]
    public void One_exact_accuracy_leaves_the_variance_of_the_other()
    {
        // By hand: ln(0.8) has the variance 0.2/80, so the limits are 40 exp(-+1.96 sqrt(0.0025)).
        var result = LikelihoodRatio.Positive(AccuracyStatement.FromCounts(80, 100), AccuracyStatement.Exact(0.98));
        result.Value.Should().BeApproximately(40, 1e-12);
        result.Upper.Should().BeApproximately(40 * Math.Exp(1.959963984540054 * 0.05), 1e-9);
        LikelihoodRatio.Positive(AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.98)).Interval.Should().BeNull();
        LikelihoodRatio.Negative(AccuracyStatement.FromInterval(0.8, 0.7, 0.88), AccuracyStatement.Exact(0)).Reason.Should().Be(UndefinedReason.SpecificityOfZero);
    }
}
