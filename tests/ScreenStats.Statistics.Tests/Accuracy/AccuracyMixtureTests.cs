using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Statistics.Tests.Accuracy;

public sealed class AccuracyMixtureTests
{
    [Fact]
    public void Every_row_of_the_reference_table_is_met() =>
        Mismatches.ShouldBeNone(ReferenceTable.Load("accuracy-mixtures"), row =>
        {
            var mixture = AccuracyMixture.Of(row.Text("parts").Split(' ').Select(part =>
            {
                var counts = part.Split('/', ':').Select(text => long.Parse(text, System.Globalization.CultureInfo.InvariantCulture)).ToArray();
                return (AccuracyStatement.FromCounts(counts[0], counts[1]), (double)counts[2]);
            }));
            return [row.Mismatch("value", mixture.Value), row.Mismatch("variance", mixture.Variance)];
        });

    [Fact]
    public void One_test_is_itself_and_weights_of_nothing_are_left_out()
    {
        var one = AccuracyStatement.FromCounts(61, 97);
        AccuracyMixture.Of([(one, 5), (AccuracyStatement.Exact(0.5), 0)]).Should().BeSameAs(one);
    }

    [Fact]
    public void Exact_parts_make_an_exact_mixture()
    {
        var mixture = AccuracyMixture.Of([(AccuracyStatement.Exact(0.9), 1), (AccuracyStatement.Exact(0.7), 3)]);
        mixture.Value.Should().BeApproximately(0.75, 1e-15);
        mixture.Variance.Should().Be(0);
    }

    [Fact]
    public void Perfect_scores_stay_perfect_and_know_more_than_either_alone()
    {
        var mixture = AccuracyMixture.Of([(AccuracyStatement.FromCounts(200, 200), 1), (AccuracyStatement.FromCounts(300, 300), 1)]);
        mixture.Value.Should().Be(1);
        mixture.Trials.Should().BeGreaterThan(300);
        mixture.Variance.Should().BeLessThan(AccuracyStatement.FromCounts(300, 300).Variance);
    }

    [Fact]
    public void A_perfect_score_beside_another_keeps_the_interval_below_one()
    {
        var mixture = AccuracyMixture.Of([(AccuracyStatement.FromCounts(200, 200), 1), (AccuracyStatement.FromCounts(295, 300), 1)]);
        mixture.Value.Should().BeApproximately((1 + (295 / 300.0)) / 2, 1e-15);
        mixture.IntervalAt(0.95).Upper.Should().BeLessThan(1);
    }

    [Fact]
    public void Weights_that_cannot_be_are_refused()
    {
        FluentActions.Invoking(() => AccuracyMixture.Of([])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => AccuracyMixture.Of([(AccuracyStatement.Exact(1), -1)])).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => AccuracyMixture.Of([(AccuracyStatement.Exact(1), double.NaN)])).Should().Throw<ArgumentOutOfRangeException>();
    }
}
