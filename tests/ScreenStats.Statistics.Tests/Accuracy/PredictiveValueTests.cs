using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Statistics.Tests.Accuracy;

public sealed class PredictiveValueTests
{
    private static readonly Gen<double> Share = 
        // On a grid of 2^-20: a complement is then exact.
        Gen.OneOf(Gen.Double[0, 1], Gen.Double[0, 1].Select(u => u * u * u), Gen.Const(0.0), Gen.Const(1.0)).Select(u => Math.Round(u * 1048576) / 1048576);

    private static readonly Gen<AccuracyStatement> Statement = Gen.OneOf(
        Share.Select(AccuracyStatement.Exact),
        Gen.Select(Gen.Long[1, 5000], Share).Select((n, share) => AccuracyStatement.FromCounts((long)(n * share), n)),
        Gen.Select(Share, Share, Share).Select((a, b, c) =>
        {
            var sorted = new[] { a, b, c }.Order().ToArray();
            return AccuracyStatement.FromInterval(sorted[1], sorted[0], sorted[2]);
        }));

    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("predictive-values"), row =>
        {
            var (sensitivity, specificity) = (Statements.Read(row.Text("sensitivity")), Statements.Read(row.Text("specificity")));
            var (prevalence, confidence) = (row.Number("prevalence"), row.Number("confidence"));
            var positive = row.Text("measure") == "positive";
            var result = positive
                ? PredictiveValue.Positive(sensitivity, specificity, prevalence, confidence)
                : PredictiveValue.Negative(sensitivity, specificity, prevalence, confidence);
            var point = positive
                ? PredictiveValue.Positive(sensitivity.Value, specificity.Value, prevalence)
                : PredictiveValue.Negative(sensitivity.Value, specificity.Value, prevalence);
            return [row.Mismatch("value", result.Value), row.Mismatch("value", point.Value), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void Every_row_of_the_table_of_wald_limits_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("predictive-values-wald"), row =>
        {
            var (sensitivity, specificity) = (Statements.Read(row.Text("sensitivity")), Statements.Read(row.Text("specificity")));
            var prevalence = AccuracyStatement.Exact(row.Number("prevalence"));
            var result = row.Text("measure") == "positive"
                ? PredictiveValue.Positive(sensitivity, specificity, prevalence, PredictiveInterval.Wald, row.Number("confidence"))
                : PredictiveValue.Negative(sensitivity, specificity, prevalence, PredictiveInterval.Wald, row.Number("confidence"));
            return [row.Mismatch("value", result.Value), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void Every_row_of_the_table_of_prevalences_for_a_share_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("prevalence-for-share"), row =>
        {
            var result = PredictiveValue.PrevalenceForPositiveShare(
                row.Number("share"), Statements.Read(row.Text("sensitivity")), Statements.Read(row.Text("specificity")), row.Number("confidence"));
            return [row.Mismatch("value", result.Value), row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void At_the_prevalence_for_a_share_the_positive_value_is_that_share() => Gen.Select(Statement, Statement, Gen.Double[0.001, 0.999]).Sample((sensitivity, specificity, share) =>
    {
        var result = PredictiveValue.PrevalenceForPositiveShare(share, sensitivity, specificity);
        if (result.Value is not { } prevalence) return result.Reason == UndefinedReason.NoTruePositivePossible;
        return prevalence == 0
            ? specificity.Value == 1
            : Math.Abs(PredictiveValue.Positive(sensitivity, specificity, prevalence).Value!.Value - share) < 1e-9;
    });

    [Fact]
    public void The_curve_is_the_predictive_values_point_by_point()
    {
        var (sensitivity, specificity) = (AccuracyStatement.FromCounts(61, 97), AccuracyStatement.FromCounts(2391, 2400));
        var prevalences = PredictiveCurve.Prevalences(0.0001, 0.5, 26);
        prevalences.Should().HaveCount(26).And.BeInAscendingOrder();
        prevalences[0].Should().Be(0.0001);
        prevalences[^1].Should().Be(0.5);
        var curve = PredictiveCurve.Of(sensitivity, specificity, prevalences);
        curve[7].Positive.Should().Be(PredictiveValue.Positive(sensitivity, specificity, prevalences[7]));
        curve[7].Negative.Should().Be(PredictiveValue.Negative(sensitivity, specificity, prevalences[7]));
        curve.Select(point => point.Positive.Value!.Value).Should().BeInAscendingOrder();
        FluentActions.Invoking(() => PredictiveCurve.Prevalences(0, 0.5, 10)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => PredictiveValue.PrevalenceForPositiveShare(1, sensitivity, specificity)).Should().Throw<ArgumentOutOfRangeException>();
    }

    /// <summary>COVAG study, Front Med 2022;9:774550, abstract, and the JABFM table's panel a, per 10,000.</summary>
    [Theory]
    [InlineData(0.752, 0.996, 0.05, 376, 38, 124)]
    [InlineData(0.319, 0.99819, 0.005, 16, 18, 34)]
    [InlineData(0.9, 0.95, 0.001, 9, 500, 1)]
    [InlineData(0.9, 0.95, 0.002, 18, 499, 2)]
    public void Expected_results_per_ten_thousand_are_those_published(
        double sensitivity, double specificity, double prevalence, double truePositives, double falsePositives, double falseNegatives)
    {
        var expected = new ExpectedResults(sensitivity, specificity, prevalence, 10_000);
        expected.TruePositives.Should().BeApproximately(truePositives, 0.5 + 1e-9);
        expected.FalsePositives.Should().BeApproximately(falsePositives, 0.5 + 1e-9);
        expected.FalseNegatives.Should().BeApproximately(falseNegatives, 0.5 + 1e-9);
        (expected.TruePositives + expected.FalsePositives + expected.FalseNegatives + expected.TrueNegatives).Should().BeApproximately(10_000, 1e-9);
    }

    /// <summary>PMC7454296, Table 5: accuracy at a specificity of 1.</summary>
    [Theory]
    [InlineData(0.775, 0.03, 0.9933)]
    [InlineData(0.775, 0.05, 0.9888)]
    [InlineData(0.775, 0.10, 0.9775)]
    [InlineData(0.9474, 0.03, 0.9984)]
    [InlineData(0.9474, 0.05, 0.9974)]
    [InlineData(0.9474, 0.10, 0.9947)]
    public void The_share_of_right_results_is_as_published(double sensitivity, double prevalence, double accuracy) =>
        new ExpectedResults(sensitivity, 1, prevalence, 10_000).Accuracy.Should().BeApproximately(accuracy, 5e-5 + 1e-9);

    [Fact]
    public void Four_counts_give_the_same_as_the_statements_made_from_them()
    {
        var counts = new DiagnosticCounts(44, 79, 4, 2465);
        PredictiveValue.Positive(counts, 0.01).Should().Be(PredictiveValue.Positive(AccuracyStatement.FromCounts(44, 123), AccuracyStatement.FromCounts(2465, 2469), 0.01));
        PredictiveValue.Negative(counts, 0.01).Should().Be(PredictiveValue.Negative(AccuracyStatement.FromCounts(44, 123), AccuracyStatement.FromCounts(2465, 2469), 0.01));
        PredictiveValue.Positive(new DiagnosticCounts(0, 0, 4, 5), 0.01).Reason.Should().Be(UndefinedReason.NobodyWithTheCondition);
        PredictiveValue.Negative(new DiagnosticCounts(3, 4, 0, 0), 0.01).Reason.Should().Be(UndefinedReason.NobodyWithoutTheCondition);
    }

    [Fact]
    public void Values_and_limits_are_finite_ordered_and_in_the_unit_interval() => Gen.Select(Statement, Statement, Statement).Sample((sensitivity, specificity, prevalence) =>
    {
        foreach (var result in new[] { PredictiveValue.Positive(sensitivity, specificity, prevalence), PredictiveValue.Negative(sensitivity, specificity, prevalence) })
        {
            if (!result.IsDefined)
            {
                if (result.Reason is null) return false;
                continue;
            }

            if (!(result.Value is >= 0 and <= 1)) return false;
            if (result.Interval is { } interval && !(interval.Lower >= 0 && interval.Contains(result.Value.Value) && interval.Upper <= 1)) return false;
        }

        return true;
    });

    [Fact]
    public void The_negative_value_is_the_positive_one_with_everything_mirrored() => Gen.Select(Statement, Statement, Statement).Sample((sensitivity, specificity, prevalence) =>
    {
        var one = PredictiveValue.Negative(sensitivity, specificity, prevalence);
        var other = PredictiveValue.Positive(specificity, sensitivity, prevalence.Complement());
        return one.IsDefined == other.IsDefined && (!one.IsDefined || Math.Abs(one.Value!.Value - other.Value!.Value) < 1e-12);
    });

    [Fact]
    public void More_confidence_is_never_narrower() => Gen.Select(Statement, Statement, Gen.Double[0.001, 0.999]).Sample((sensitivity, specificity, prevalence) =>
    {
        var narrow = PredictiveValue.Positive(sensitivity, specificity, prevalence, 0.9);
        var wide = PredictiveValue.Positive(sensitivity, specificity, prevalence, 0.99);
        return narrow.Interval is not { } inner || wide.Interval is not { } outer || (outer.Lower <= inner.Lower && outer.Upper >= inner.Upper);
    });

    [Fact]
    public void Exact_inputs_give_a_point_without_an_interval()
    {
        var result = PredictiveValue.Positive(AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.98), 0.01);
        result.Interval.Should().BeNull();
        result.Method.Should().Be("exact-inputs");
    }

    [Fact]
    public void No_false_positive_seen_gives_one_with_a_lower_limit_below_it()
    {
        var result = PredictiveValue.Positive(AccuracyStatement.FromCounts(113, 176), AccuracyStatement.FromCounts(651, 651), 0.01);
        result.Value.Should().Be(1);
        result.Upper.Should().Be(1);
        result.Lower.Should().BeInRange(0.2, 0.9);
    }

    [Fact]
    public void An_uncertain_prevalence_widens_the_interval()
    {
        var (sensitivity, specificity) = (AccuracyStatement.FromCounts(61, 97), AccuracyStatement.FromCounts(2391, 2400));
        var known = PredictiveValue.Positive(sensitivity, specificity, 0.004);
        var stated = PredictiveValue.Positive(sensitivity, specificity, AccuracyStatement.FromInterval(0.004, 0.002, 0.008));
        stated.Value.Should().Be(known.Value);
        stated.Lower.Should().BeLessThan(known.Lower!.Value);
        stated.Upper.Should().BeGreaterThan(known.Upper!.Value);
    }

    /// <summary>Exact, by summing both binomials: no luck of a seed.</summary>
    [Theory]
    [InlineData(0.65, 97, 0.990, 600, 0.004)]
    [InlineData(0.80, 120, 0.980, 400, 0.010)]
    [InlineData(0.50, 60, 0.970, 300, 0.100)]
    public void The_logit_interval_covers_about_as_often_as_it_says(double sensitivity, int with, double specificity, int without, double prevalence)
    {
        var truth = PredictiveValue.Positive(sensitivity, specificity, prevalence).Value!.Value;
        double covered = 0;
        for (var x = 0; x <= with; x++)
        {
            var px = Pmf(x, with, sensitivity);
            if (px < 1e-8) continue;
            for (var y = 0; y <= without; y++)
            {
                var py = Pmf(y, without, specificity);
                if (py < 1e-8) continue;
                var result = PredictiveValue.Positive(AccuracyStatement.FromCounts(x, with), AccuracyStatement.FromCounts(y, without), prevalence);
                if (result.Interval!.Value.Contains(truth)) covered += px * py;
            }
        }

        covered.Should().BeInRange(0.94, 0.985);
    }

    [Theory]
    [InlineData(-0.1, 0.5, 0.5)]
    [InlineData(0.5, 1.1, 0.5)]
    [InlineData(0.5, 0.5, double.NaN)]
    public void Figures_that_are_no_probabilities_are_refused(double sensitivity, double specificity, double prevalence)
    {
        foreach (var call in new Action[] { () => PredictiveValue.Positive(sensitivity, specificity, prevalence), () => PredictiveValue.Negative(sensitivity, specificity, prevalence) })
            call.Should().Throw<ArgumentOutOfRangeException>();
    }

    private static double Pmf(int k, int n, double p)
    {
        double log = 0;
        for (var i = 1; i <= k; i++) log += Math.Log((n - k + i) / (double)i);
        return Math.Exp(log + (k * Math.Log(p)) + ((n - k) * Math.Log(1 - p)));
    }
}
