using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Prevalence;

public sealed class ExactPrevalenceTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("exact-prevalence"), row =>
        {
            var (sensitivity, specificity) = (Statements.Read(row.Text("sensitivity")), Statements.Read(row.Text("specificity")));
            var (successes, trials, confidence) = (row.Count("successes"), row.Count("trials"), row.Number("confidence"));
            var result = Enum.TryParse<ExactMethod>(row.Text("interval"), out var exact)
                ? ExactPrevalence.Estimate(successes, trials, sensitivity, specificity, confidence, exact)
                : ExactPrevalence.Mapped(ProportionInterval.Of(Enum.Parse<IntervalMethod>(row.Text("interval")), successes, trials, confidence), sensitivity, specificity);
            return [row.Mismatch("lower", result.Lower), row.Mismatch("upper", result.Upper)];
        });

    [Fact]
    public void Only_the_values_of_the_accuracy_enter()
    {
        var counted = ExactPrevalence.Estimate(50, 3330, AccuracyStatement.FromCounts(8, 10), AccuracyStatement.FromCounts(199, 200));
        var exact = ExactPrevalence.Estimate(50, 3330, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.995));
        counted.Interval.Should().Be(exact.Interval);
        counted.StandardError.Should().BeNull();
    }

    [Fact]
    public void Blakers_interval_lies_inside_clopper_and_pearsons() => Gen.Select(Gen.Long[1, 400], Gen.Double[0, 1], Gen.Double[0.5, 0.999]).Sample((trials, share, confidence) =>
    {
        var perfect = AccuracyStatement.Exact(1);
        var successes = (long)(trials * share);
        var outer = ExactPrevalence.Estimate(successes, trials, perfect, perfect, confidence).Interval!.Value;
        var inner = ExactPrevalence.Estimate(successes, trials, perfect, perfect, confidence, ExactMethod.Blaker).Interval!.Value;
        return inner.Lower >= outer.Lower - 1e-12 && inner.Upper <= outer.Upper + 1e-12 && inner.Contains((double)successes / trials);
    });

    [Fact]
    public void A_design_effect_of_one_in_real_counts_is_clopper_and_pearson()
    {
        var perfect = AccuracyStatement.Exact(1);
        var result = ExactPrevalence.Estimate(30, 300, perfect, perfect, designEffect: 3);
        var plain = ProportionInterval.ClopperPearson(10, 100);
        result.Lower.Should().BeApproximately(plain.Lower!.Value, 1e-12);
        result.Upper.Should().BeApproximately(plain.Upper!.Value, 1e-12);
        FluentActions.Invoking(() => ExactPrevalence.Estimate(30, 300, perfect, perfect, 0.95, ExactMethod.Blaker, 3)).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void What_cannot_be_corrected_is_undefined_and_says_why()
    {
        ExactPrevalence.Estimate(0, 0, AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.9)).Reason.Should().Be(UndefinedReason.NoTrials);
        ExactPrevalence.Estimate(5, 10, AccuracyStatement.Exact(0.5), AccuracyStatement.Exact(0.5)).Reason.Should().Be(UndefinedReason.TestNoBetterThanChance);
    }

    [Fact]
    public void An_apparent_prevalence_mapped_by_hand_is_the_same()
    {
        var (sensitivity, specificity) = (AccuracyStatement.FromCounts(8, 10), AccuracyStatement.Exact(0.995));
        ExactPrevalence.Mapped(ProportionInterval.ClopperPearson(50, 3330), sensitivity, specificity).Interval
            .Should().Be(ExactPrevalence.Estimate(50, 3330, sensitivity, specificity).Interval);
        ExactPrevalence.Mapped(ProportionInterval.Wilson(0, 0), sensitivity, specificity).Reason.Should().Be(UndefinedReason.NoTrials);
    }

    /// <summary>Exact, by summing the binomial: no luck of a seed.</summary>
    [Theory]
    [InlineData(ExactMethod.ClopperPearson)]
    [InlineData(ExactMethod.Blaker)]
    public void It_covers_at_least_as_often_as_it_says_where_the_accuracy_is_known(ExactMethod method)
    {
        const long Trials = 40;
        var (sensitivity, specificity) = (AccuracyStatement.Exact(0.8), AccuracyStatement.Exact(0.97));
        var intervals = Enumerable.Range(0, (int)Trials + 1).Select(x => ExactPrevalence.Estimate(x, Trials, sensitivity, specificity, 0.95, method).Interval!.Value).ToList();
        for (var prevalence = 0.01; prevalence < 1; prevalence += 0.0073)
        {
            var positive = (prevalence * 0.8) + ((1 - prevalence) * 0.03);
            double covered = 0, point = Math.Pow(1 - positive, Trials);
            for (var x = 0; x <= Trials; x++)
            {
                if (intervals[x].Contains(prevalence)) covered += point;
                point *= (Trials - x) / (x + 1.0) * positive / (1 - positive);
            }

            covered.Should().BeGreaterThanOrEqualTo(0.95 - 1e-9, $"at {prevalence}");
        }
    }
}
