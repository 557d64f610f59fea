using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Tests.Verification;

public sealed class BeggGreenesTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("partial-verification"), row =>
        {
            var counts = new VerificationCounts(row.Count("positives"), row.Count("confirmed"), row.Count("refuted"), row.Count("negatives"), row.Count("missed"), row.Count("agreed"));
            var result = row.Text("measure") == "sensitivity" ? BeggGreenes.Sensitivity(counts) : BeggGreenes.Specificity(counts);
            var estimate = result.Estimate;
            List<string?> messages =
            [
                row.Mismatch("value", estimate.Value), row.Mismatch("interval_lower", estimate.Lower), row.Mismatch("interval_upper", estimate.Upper),
            ];
            if (result.LogitVariance is { } variance && estimate.Value is { } value && result.StandardError is { } error)
            {
                var z = Quantile.Normal(0.95);
                var half = z * Math.Sqrt(variance);
                var logit = Math.Log(value / (1 - value));
                messages.Add(row.Mismatch("lower", 1 / (1 + Math.Exp(half - logit))));
                messages.Add(row.Mismatch("upper", 1 / (1 + Math.Exp(-half - logit))));
                messages.Add(row.Mismatch("wald_lower", value - (z * error)));
                messages.Add(row.Mismatch("wald_upper", value + (z * error)));
            }

            return messages;
        });

    [Fact]
    public void With_large_counts_the_interval_is_near_the_logit_one()
    {
        var estimate = BeggGreenes.Sensitivity(new VerificationCounts(429, 231, 32, 221, 27, 54)).Estimate;
        estimate.Lower.Should().BeApproximately(0.7826, 0.005);
        estimate.Upper.Should().BeApproximately(0.8790, 0.005);
    }

    [Fact]
    public void Without_verification_it_is_undefined_and_says_why()
    {
        Reason(new VerificationCounts(10, 0, 0, 90, 0, 0)).Should().Be(UndefinedReason.NoVerifiedRuns);
        Reason(new VerificationCounts(10, 5, 2, 90, 0, 0)).Should().Be(UndefinedReason.NoVerifiedNegatives);
        Reason(new VerificationCounts(10, 0, 0, 90, 1, 8)).Should().Be(UndefinedReason.NoVerifiedPositives);
        Reason(new VerificationCounts(10, 0, 2, 90, 0, 8)).Should().Be(UndefinedReason.NoCases);
        BeggGreenes.Specificity(new VerificationCounts(10, 2, 0, 90, 8, 0)).Estimate.Reason.Should().Be(UndefinedReason.NobodyWithoutTheCondition);
    }

    [Fact]
    public void Nothing_missed_gives_one_with_a_lower_limit_that_falls_with_fewer_audits()
    {
        var many = BeggGreenes.Sensitivity(new VerificationCounts(300, 150, 100, 59_700, 0, 1000)).Estimate;
        var few = BeggGreenes.Sensitivity(new VerificationCounts(300, 150, 100, 59_700, 0, 100)).Estimate;
        many.Value.Should().Be(1);
        many.Upper.Should().Be(1);
        many.Lower.Should().BeLessThan(0.7);
        few.Lower.Should().BeLessThan(many.Lower!.Value);
    }

    [Fact]
    public void Limits_lie_in_the_unit_interval_around_the_value() =>
        Gen.Select(Gen.Long[0, 30].Array[4], Gen.Long[0, 5000].Array[2]).Sample((verified, unverified) =>
        {
            var counts = new VerificationCounts(verified[0] + verified[1] + unverified[0], verified[0], verified[1], verified[2] + verified[3] + unverified[1], verified[2], verified[3]);
            return new[] { BeggGreenes.Sensitivity(counts).Estimate, BeggGreenes.Specificity(counts).Estimate }
                .All(e => e.IsDefined ? 0 <= e.Lower && e.Interval!.Value.Contains(e.Value!.Value) && e.Upper <= 1 : e.Reason is not null);
        });

    [Fact]
    public void Everything_verified_gives_the_plain_proportion() => Gen.Long[1, 500].Array[4].Sample(c =>
    {
        var counts = new VerificationCounts(c[0] + c[1], c[0], c[1], c[2] + c[3], c[2], c[3]);
        return Math.Abs(BeggGreenes.Sensitivity(counts).Estimate.Value!.Value - ((double)c[0] / (c[0] + c[2]))) < 1e-12
            && Math.Abs(BeggGreenes.Specificity(counts).Estimate.Value!.Value - ((double)c[3] / (c[3] + c[1]))) < 1e-12;
    });

    /// <summary>
    /// Whole programs with known truth: 60,000 runs, 85 % of positives verified, 1,000 random audits. The seed is fixed; two
    /// standard errors of 2,000 programs are one point. The wider study is tests/reference/generators/verification.py.
    /// </summary>
    [Theory]
    [InlineData(0.004, 0.60, 1000)]
    [InlineData(0.010, 0.70, 1000)]
    [InlineData(0.010, 0.50, 1000)]
    [InlineData(0.020, 0.60, 1000)]
    [InlineData(0.030, 0.30, 1000)]
    [InlineData(0.030, 0.80, 300)]
    public void The_interval_of_the_sensitivity_covers_in_ninety_three_to_ninety_seven_percent_of_programs(double prevalence, double sensitivity, int audits)
    {
        const int Programs = 2000;
        var random = new Random(20260105);
        var covered = 0;
        for (var i = 0; i < Programs; i++)
        {
            if (BeggGreenes.Sensitivity(Simulate(random, prevalence, sensitivity, audits)).Estimate.Interval is { } interval && interval.Contains(sensitivity)) covered++;
        }

        ((double)covered / Programs).Should().BeInRange(0.93, 0.97);
    }

    private static VerificationCounts Simulate(Random random, double prevalence, double sensitivity, int audits)
    {
        const int Runs = 60_000;
        var cases = Draw(random, Runs, prevalence);
        var found = Draw(random, cases, sensitivity);
        var falsePositives = Draw(random, Runs - cases, 0.002);
        var confirmed = Draw(random, found, 0.85);
        var refuted = Draw(random, falsePositives, 0.85);
        long negatives = Runs - found - falsePositives;
        long infected = cases - found;
        long missed = 0;
        for (long i = 0; i < audits; i++)
        {
            if (random.NextDouble() * (negatives - i) < infected - missed) missed++;
        }

        return new VerificationCounts(found + falsePositives, confirmed, refuted, negatives, missed, audits - missed);
    }

    /// <summary>A binomial draw by jumping from success to success.</summary>
    private static int Draw(Random random, int trials, double probability)
    {
        var successes = 0;
        var log = Math.Log(1 - probability);
        for (double at = 0; ;)
        {
            at += Math.Floor(Math.Log(1 - random.NextDouble()) / log) + 1;
            if (at > trials) return successes;
            successes++;
        }
    }

    private static UndefinedReason? Reason(VerificationCounts counts) => BeggGreenes.Sensitivity(counts).Estimate.Reason;
}
