using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Statistics.Tests.Prevalence;

public sealed class BayesianPrevalenceTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met()
    {
        var posteriors = new Dictionary<string, PrevalencePosterior>(StringComparer.Ordinal);
        Mismatches.ShouldBeNone(ReferenceTable.Load("prevalence-posteriors"), row =>
        {
            var inputs = string.Join(';', new[] { "successes", "trials", "sensitivity", "specificity", "prior_prevalence", "prior_sensitivity", "prior_specificity", "confidence" }.Select(row.Text));
            if (!posteriors.TryGetValue(inputs, out var result))
            {
                result = BayesianPrevalence.Estimate(
                    row.Count("successes"), row.Count("trials"), Statements.Read(row.Text("sensitivity")), Statements.Read(row.Text("specificity")),
                    new AccuracyPriors
                    {
                        Prevalence = Statements.Beta(row.Text("prior_prevalence")),
                        Sensitivity = Statements.Beta(row.Text("prior_sensitivity")),
                        Specificity = Statements.Beta(row.Text("prior_specificity")),
                    },
                    row.Number("confidence"));
                posteriors.Add(inputs, result);
            }

            var summary = row.Text("parameter") switch { "prevalence" => result.Prevalence, "sensitivity" => result.Sensitivity, _ => result.Specificity };
            return
            [
                row.Mismatch("mean", summary?.Mean), row.Mismatch("standard_deviation", summary?.StandardDeviation), row.Mismatch("median", summary?.Median),
                row.Mismatch("lower", summary?.EqualTailed.Lower), row.Mismatch("upper", summary?.EqualTailed.Upper),
                row.Mismatch("shortest_lower", summary?.Shortest.Lower), row.Mismatch("shortest_upper", summary?.Shortest.Upper),
            ];
        });
    }

    [Fact]
    public void With_a_perfect_exact_test_it_is_the_beta_distribution_of_the_counts() =>
        Gen.Select(Gen.Long[1, 100_000], Gen.Double[0, 1], Gen.Double[0.2, 5], Gen.Double[0.2, 5]).Sample(
            (trials, share, a, b) =>
            {
                var successes = (long)(trials * share);
                var known = new BetaDistribution(successes + a, trials - successes + b);
                var result = BayesianPrevalence.EstimatePrevalence(
                    successes, trials, AccuracyStatement.Exact(1), AccuracyStatement.Exact(1), new AccuracyPriors { Prevalence = new BetaDistribution(a, b) }).Prevalence!;
                var interval = known.EqualTailed(0.95);
                var deviation = Math.Sqrt(known.Mean * (1 - known.Mean) / (known.Alpha + known.Beta + 1));
                return Near(result.Mean, known.Mean) && Near(result.StandardDeviation, deviation)
                    && Near(result.EqualTailed.Lower, interval.Lower) && Near(result.EqualTailed.Upper, interval.Upper);
            },
            iter: 60);

    [Fact]
    public void The_shortest_interval_is_no_longer_than_the_other_and_all_stays_in_the_unit_interval() =>
        Gen.Select(Gen.Long[1, 2000], Gen.Double[0, 1], Gen.Long[1, 300], Gen.Double[0.5, 1], Gen.Double[0.5, 1]).Sample(
            (trials, share, n, se, sp) =>
            {
                var result = BayesianPrevalence.Estimate(
                    (long)(trials * share), trials, AccuracyStatement.FromCounts((long)(se * n), n), AccuracyStatement.FromCounts((long)(sp * n), n));
                if (!result.IsDefined) return result.Reason == UndefinedReason.TestNoBetterThanChance;
                return new[] { result.Prevalence!, result.Sensitivity!, result.Specificity! }.All(one =>
                    one.Shortest.Width <= one.EqualTailed.Width + 1e-9 && one.EqualTailed.Contains(one.Median) && one.EqualTailed.Lower >= 0 && one.EqualTailed.Upper <= 1
                    && one.Shortest.Lower >= 0 && one.Shortest.Upper <= 1 && one.StandardDeviation > 0);
            },
            iter: 3);

    /// <summary>Many tests against a weak or contradicted accuracy: the top of the density is an edge one part in ten thousand wide.</summary>
    [Theory]
    [InlineData(14315028, 21908945, "4/4", "0.5547[0.4692,0.6166]")]
    [InlineData(392912, 18834648, "0.7567", "0.7493[0.6455,0.7996]")]
    [InlineData(84508, 175918, "0.7735", "1[0.8225,1]")]
    [InlineData(0, 531435856, "1/2", "0.9588[0.8141,1]")]
    public void Sharp_edges_do_not_break_the_integral(long successes, long trials, string sensitivity, string specificity)
    {
        var result = BayesianPrevalence.Estimate(successes, trials, Statements.Read(sensitivity), Statements.Read(specificity));
        foreach (var one in new[] { result.Prevalence!, result.Sensitivity!, result.Specificity! })
        {
            double.IsFinite(one.Mean).Should().BeTrue();
            double.IsFinite(one.StandardDeviation).Should().BeTrue();
            one.EqualTailed.Contains(one.Median).Should().BeTrue();
            one.Shortest.Width.Should().BeLessThanOrEqualTo(one.EqualTailed.Width + 1e-9);
        }

        // With so many tests the apparent prevalence is what the three means must give back, up to their covariance.
        var positive = (result.Prevalence!.Mean * result.Sensitivity!.Mean) + ((1 - result.Prevalence.Mean) * (1 - result.Specificity!.Mean));
        positive.Should().BeApproximately((double)successes / trials, 0.06);
    }

    [Fact]
    public void The_prevalence_alone_is_the_same()
    {
        var (sensitivity, specificity) = (AccuracyStatement.FromInterval(0.8, 0.7, 0.88), AccuracyStatement.Exact(0.995));
        BayesianPrevalence.EstimatePrevalence(50, 3330, sensitivity, specificity).Prevalence
            .Should().Be(BayesianPrevalence.Estimate(50, 3330, sensitivity, specificity).Prevalence);
    }

    [Fact]
    public void Results_and_roles_swapped_give_the_mirrored_posterior()
    {
        // Positive and negative, with and without the condition exchanged: prevalence becomes its complement.
        var (sensitivity, specificity) = (AccuracyStatement.FromCounts(35, 40), AccuracyStatement.FromCounts(57, 60));
        var one = BayesianPrevalence.Estimate(30, 100, sensitivity, specificity);
        var other = BayesianPrevalence.Estimate(70, 100, specificity, sensitivity);
        one.Prevalence!.Mean.Should().BeApproximately(1 - other.Prevalence!.Mean, 1e-8);
        one.Prevalence.EqualTailed.Lower.Should().BeApproximately(1 - other.Prevalence.EqualTailed.Upper, 1e-8);
        one.Sensitivity!.Median.Should().BeApproximately(other.Specificity!.Median, 1e-8);
    }

    [Fact]
    public void An_exact_accuracy_stays_as_it_is()
    {
        var result = BayesianPrevalence.Estimate(50, 3330, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.995));
        result.Sensitivity!.Mean.Should().Be(0.8);
        result.Specificity!.EqualTailed.Should().Be(new Interval(0.995, 0.995));
        result.Specificity.StandardDeviation.Should().Be(0);
    }

    [Fact]
    public void What_cannot_be_corrected_is_undefined_and_says_why()
    {
        BayesianPrevalence.Estimate(0, 0, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.9)).Reason.Should().Be(UndefinedReason.NoTrials);
        BayesianPrevalence.Estimate(5, 10, AccuracyStatement.FromCounts(5, 10), AccuracyStatement.FromCounts(5, 10)).Reason.Should().Be(UndefinedReason.TestNoBetterThanChance);
        BayesianPrevalence.Estimate(5, 10, AccuracyStatement.Exact(0.5), AccuracyStatement.Exact(0.5)).ToEstimate().Reason.Should().Be(UndefinedReason.TestNoBetterThanChance);
    }

    [Fact]
    public void A_prior_too_near_to_nothing_is_refused() =>
        FluentActions.Invoking(() => BayesianPrevalence.Estimate(
            5, 10, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.9), new AccuracyPriors { Prevalence = new BetaDistribution(0.01, 1) }))
            .Should().Throw<ArgumentOutOfRangeException>();

    // What the type promises; the largest found among drawn programs was 1.1e-8, of a standard deviation.
    private static bool Near(double actual, double expected) => Math.Abs(actual - expected) <= 1e-7 * Math.Min(expected, 1);
}
