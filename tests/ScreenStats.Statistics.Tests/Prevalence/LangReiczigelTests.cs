using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Prevalence;

public sealed class LangReiczigelTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("lang-reiczigel"), row =>
        {
            var result = LangReiczigel.Estimate(
                row.Count("successes"), row.Count("trials"), Statements.Read(row.Text("sensitivity")), Statements.Read(row.Text("specificity")), row.Number("confidence"));
            return
            [
                row.Mismatch("centre", result.AdjustedCentre), row.Mismatch("shift", result.Shift), row.Mismatch("standard_error", result.StandardError),
                row.Mismatch("unclipped_lower", result.UnclippedInterval?.Lower), row.Mismatch("unclipped_upper", result.UnclippedInterval?.Upper),
                row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper),
            ];
        });

    [Fact]
    public void The_value_is_that_of_rogan_and_gladen()
    {
        var (sensitivity, specificity) = (AccuracyStatement.FromCounts(103, 122), AccuracyStatement.FromCounts(399, 401));
        var result = LangReiczigel.Estimate(50, 3330, sensitivity, specificity);
        result.Value.Should().Be(RoganGladen.Estimate(50, 3330, sensitivity, specificity).Value);
        result.ToEstimate().Method.Should().Be("lang-reiczigel");
    }

    [Fact]
    public void With_a_perfect_exact_test_it_is_the_interval_of_agresti_and_coull() => Gen.Select(Gen.Long[1, 5000], Gen.Double[0, 1]).Sample((trials, share) =>
    {
        var successes = (long)(trials * share);
        var result = LangReiczigel.Estimate(successes, trials, AccuracyStatement.Exact(1), AccuracyStatement.Exact(1));
        var plain = ProportionInterval.AgrestiCoull(successes, trials);
        return Math.Abs(result.Lower!.Value - plain.Lower!.Value) < 1e-12 && Math.Abs(result.Upper!.Value - plain.Upper!.Value) < 1e-12;
    });

    [Fact]
    public void What_cannot_be_corrected_is_undefined_and_says_why()
    {
        LangReiczigel.Estimate(0, 0, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.9)).Reason.Should().Be(UndefinedReason.NoTrials);
        LangReiczigel.Estimate(5, 10, AccuracyStatement.Exact(0.5), AccuracyStatement.Exact(0.5)).Reason.Should().Be(UndefinedReason.TestNoBetterThanChance);
    }

    [Fact]
    public void Limits_are_ordered_around_the_value_and_in_the_unit_interval() =>
        Gen.Select(Gen.Long[1, 5000], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Long[1, 500]).Sample((trials, share, se, sp, n) =>
        {
            var result = LangReiczigel.Estimate((long)(trials * share), trials, AccuracyStatement.FromCounts((long)(se * n), n), AccuracyStatement.FromCounts((long)(sp * n), n));
            return result.IsDefined
                ? 0 <= result.Lower && result.Lower <= result.Value && result.Value <= result.Upper && result.Upper <= 1
                : result.Reason == UndefinedReason.TestNoBetterThanChance;
        });

    /// <summary>Exact, by summing all three binomials: no luck of a seed.</summary>
    [Theory]
    [InlineData(0.00, 300, 0.80, 60, 0.98, 150)]
    [InlineData(0.02, 300, 0.80, 60, 0.98, 150)]
    [InlineData(0.10, 150, 0.70, 40, 0.95, 100)]
    [InlineData(0.50, 80, 0.90, 40, 0.90, 60)]
    public void It_covers_about_as_often_as_it_says(double prevalence, int trials, double sensitivity, int with, double specificity, int without)
    {
        var positive = (prevalence * sensitivity) + ((1 - prevalence) * (1 - specificity));
        var (px, pa, pb) = (Probabilities(trials, positive), Probabilities(with, sensitivity), Probabilities(without, specificity));
        double covered = 0, seen = 0;
        for (var a = 0; a <= with; a++)
        {
            if (pa[a] < 1e-5) continue;
            for (var b = 0; b <= without; b++)
            {
                if (pb[b] < 1e-5) continue;
                for (var x = 0; x <= trials; x++)
                {
                    if (px[x] < 1e-5) continue;
                    var weight = px[x] * pa[a] * pb[b];
                    seen += weight;
                    var result = LangReiczigel.Estimate(x, trials, AccuracyStatement.FromCounts(a, with), AccuracyStatement.FromCounts(b, without));
                    if (result.Interval is { } interval && interval.Contains(prevalence)) covered += weight;
                }
            }
        }

        (covered / seen).Should().BeInRange(0.935, 1);
    }

    private static double[] Probabilities(int n, double p)
    {
        var result = new double[n + 1];
        result[0] = Math.Pow(1 - p, n);
        for (var x = 1; x <= n; x++) result[x] = result[x - 1] * (n - x + 1) / x * (p / (1 - p));
        return result;
    }
}
