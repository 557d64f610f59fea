using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Accuracy;

public sealed class AccuracyStatementTests
{
    [Fact]
    public void Counts_have_the_binomial_variance()
    {
        var statement = AccuracyStatement.FromCounts(61, 97);
        statement.Kind.Should().Be(AccuracyKind.Counts);
        statement.Value.Should().Be(61.0 / 97);
        statement.Variance.Should().BeApproximately(61.0 / 97 * 36 / 97 / 97, 1e-15);
        statement.IntervalAt(0.95).Should().Be(ProportionInterval.Wilson(61, 97).Interval!.Value);
    }

    [Fact]
    public void An_interval_made_on_the_logit_scale_gives_nearly_its_variance_back()
    {
        const double Logit = 1.2;
        var statement = AccuracyStatement.FromInterval(Expit(Logit), Expit(Logit - (1.959963984540054 * 0.3)), Expit(Logit + (1.959963984540054 * 0.3)));

        // A beta distribution is not a logit-normal one: 5 %.
        statement.LogitVariance.Should().BeApproximately(0.09, 0.0045);
        statement.IntervalAt(0.95).Should().Be(statement.StatedInterval!.Value);
        statement.IntervalAt(0.99).Width.Should().BeGreaterThan(statement.StatedInterval!.Value.Width);
    }

    [Fact]
    public void The_matched_distribution_has_its_mode_at_the_value_and_the_width_of_the_interval() =>
        Gen.Select(Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.999], Gen.Double[0.001, 0.999], Gen.Double[0.5, 0.99]).Sample((a, b, c, confidence) =>
        {
            var sorted = new[] { a, b, c }.Order().ToArray();
            if (sorted[2] - sorted[0] is < 1e-3 or > 0.49) return true;
            var matched = AccuracyStatement.FromInterval(sorted[1], sorted[0], sorted[2], confidence).Matched!.Value;
            var mode = (matched.Alpha - 1) / (matched.Alpha + matched.Beta - 2);
            return Math.Abs(mode - sorted[1]) < 1e-9 && Math.Abs(matched.EqualTailed(confidence).Width - (sorted[2] - sorted[0])) < 1e-9;
        });

    [Fact]
    public void Every_row_of_the_table_of_matched_distributions_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("matched-distributions"), row =>
        {
            var matched = BetaDistribution.Matching(row.Number("value"), row.Number("lower"), row.Number("upper"), row.Number("confidence"));
            return [row.Mismatch("alpha", matched.Alpha), row.Mismatch("beta", matched.Beta)];
        });

    [Fact]
    public void Counts_read_back_from_their_own_uniform_posterior_are_the_counts()
    {
        var interval = new BetaDistribution(62, 37).EqualTailed(0.9);
        var matched = AccuracyStatement.FromInterval(61.0 / 97, interval.Lower, interval.Upper, 0.9).Matched!.Value;
        matched.Alpha.Should().BeApproximately(62, 1e-7);
        matched.Beta.Should().BeApproximately(37, 1e-7);
    }

    [Fact]
    public void An_exact_value_has_no_variance_and_no_width()
    {
        var statement = AccuracyStatement.Exact(1);
        statement.Variance.Should().Be(0);
        statement.IntervalAt(0.95).Should().Be(new Interval(1, 1));
        AccuracyStatement.FromInterval(0.7, 0.7, 0.7).Variance.Should().Be(0);
    }

    [Fact]
    public void Nothing_missed_in_a_study_is_still_uncertain()
    {
        AccuracyStatement.FromCounts(300, 300).Variance.Should().BePositive();
        AccuracyStatement.FromCounts(300, 300).Value.Should().Be(1);
        AccuracyStatement.FromCounts(0, 300).Variance.Should().BePositive();
    }

    [Fact]
    public void A_value_of_one_with_its_exact_interval_is_read_as_the_counts_behind_it()
    {
        var counts = AccuracyStatement.FromCounts(651, 651);
        var interval = ProportionInterval.ClopperPearson(651, 651);
        var stated = AccuracyStatement.FromInterval(1, interval.Lower!.Value, 1);
        stated.Variance.Should().BeApproximately(counts.Variance, 1e-9 * counts.Variance);
    }

    [Fact]
    public void An_interval_that_ends_at_zero_or_one_has_a_distribution_too()
    {
        AccuracyStatement.FromInterval(0.998, 0.99, 1).Matched!.Value.EqualTailed(0.95).Width.Should().BeApproximately(0.01, 1e-12);
        AccuracyStatement.FromInterval(0.5, 0, 1).Matched.Should().Be(BetaDistribution.Uniform);
        AccuracyStatement.FromInterval(0.5, 0, 1).LogitVariance.Should().Be(4);
    }

    [Fact]
    public void The_complement_of_the_complement_is_the_statement()
    {
        var statement = AccuracyStatement.FromCounts(61, 97);
        statement.Complement().Complement().Should().Be(statement);
        AccuracyStatement.FromInterval(0.75, 0.5, 0.875).Complement().StatedInterval.Should().Be(new Interval(0.125, 0.5));
        AccuracyStatement.Exact(0.75).Complement().Value.Should().Be(0.25);
    }

    [Fact]
    public void Every_statement_has_finite_figures() =>
        Gen.Select(Gen.Long[1, 1_000_000], Gen.Double[0, 1], Gen.Double[0.5, 0.999]).Sample((n, share, confidence) =>
        {
            foreach (var statement in new[] { AccuracyStatement.FromCounts((long)(n * share), n), AccuracyStatement.FromCounts(0, n), AccuracyStatement.FromCounts(n, n) })
            {
                var interval = statement.IntervalAt(confidence);
                if (!double.IsFinite(statement.Variance) || !interval.Contains(statement.Value)) return false;
            }

            return true;
        });

    [Fact]
    public void Figures_that_cannot_be_are_refused()
    {
        var calls = new Action[]
        {
            () => AccuracyStatement.FromCounts(1, 0), () => AccuracyStatement.FromCounts(3, 2), () => AccuracyStatement.Exact(1.01), () => AccuracyStatement.Exact(double.NaN),
            () => AccuracyStatement.FromInterval(0.5, 0.6, 0.7), () => AccuracyStatement.FromInterval(0.8, 0.6, 0.7), () => AccuracyStatement.FromInterval(0.65, -0.6, 0.7),
        };
        foreach (var call in calls) call.Should().Throw<ArgumentOutOfRangeException>();
    }

    private static double Expit(double logit) => 1 / (1 + Math.Exp(-logit));
}
