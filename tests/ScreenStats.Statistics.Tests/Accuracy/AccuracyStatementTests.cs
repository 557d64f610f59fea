using ScreenStats.Statistics.Accuracy;
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
    public void An_interval_made_on_the_logit_scale_gives_its_variance_back()
    {
        const double Logit = 1.2;
        var statement = AccuracyStatement.FromInterval(Expit(Logit), Expit(Logit - (1.959963984540054 * 0.3)), Expit(Logit + (1.959963984540054 * 0.3)));
        statement.LogitVariance.Should().BeApproximately(0.09, 1e-12);
        statement.IntervalAt(0.95).Should().Be(statement.StatedInterval!.Value);
        var wider = statement.IntervalAt(0.99);
        wider.Lower.Should().BeApproximately(Expit(Logit - (2.5758293035489004 * 0.3)), 1e-12);
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
    public void An_interval_that_ends_at_one_is_read_from_its_other_half()
    {
        var stated = AccuracyStatement.FromInterval(0.998, 0.99, 1);
        var half = (Math.Log(0.998 / 0.002) - Math.Log(0.99 / 0.01)) / 1.959963984540054;
        stated.LogitVariance.Should().BeApproximately(half * half, 1e-9);
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
