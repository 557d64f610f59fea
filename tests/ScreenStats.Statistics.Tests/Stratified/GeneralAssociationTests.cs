using ScreenStats.Statistics.Comparison;
using ScreenStats.Statistics.Heterogeneity;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Stratified;

namespace ScreenStats.Statistics.Tests.Stratified;

public sealed class GeneralAssociationTests
{
    private static readonly Gen<StratumGroup[]> Drawn = Gen.Select(Gen.Int[0, 5], Gen.Int[0, 7], Gen.Long[1, 300], Gen.Double[0, 1])
        .Select((stratum, group, n, p) => new StratumGroup(stratum, group, (long)(p * p * n), n)).Array[2, 40];

    [Fact]
    public void Every_row_of_the_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("general-association"), row =>
    {
        var result = GeneralAssociation.Test(Read(row.Text("strata")));
        return [row.Mismatch("statistic", result.Statistic), row.Mismatch("degrees_of_freedom", result.DegreesOfFreedom), row.Mismatch("p_value", result.PValue)];
    });

    [Fact]
    public void Two_groups_are_Cochran_Mantel_and_Haenszels_test_without_correction()
    {
        TwoProportions[] strata = [new(20, 40, 10, 40), new(200, 400, 150, 300), new(3, 4, 1, 9)];
        var counts = strata.SelectMany((s, i) => new[] { new StratumGroup(i, 0, s.FirstSuccesses, s.FirstTrials), new StratumGroup(i, 1, s.SecondSuccesses, s.SecondTrials) });
        GeneralAssociation.Test([.. counts]).Statistic!.Value.Should().BeApproximately(CochranMantelHaenszel.Test(strata).Statistic!.Value, 1e-12);
    }

    [Fact]
    public void One_stratum_is_Pearsons_statistic_but_for_one_trial()
    {
        long[] events = [36, 46, 42, 63, 38];
        var result = GeneralAssociation.Test([.. events.Select((x, i) => new StratumGroup(0, i, x, 300))]);
        var pearson = HomogeneityTest.ChiSquare([.. events.Select(x => new GroupCount(x, 300))]).Statistic!.Value;
        result.Statistic!.Value.Should().BeApproximately(pearson * 1499 / 1500, 1e-10);
        result.DegreesOfFreedom.Should().Be(4);
        result.SmallestExpected!.Value.Should().BeApproximately(45, 1e-12);
    }

    [Fact]
    public void Few_groups_in_many_strata_and_many_groups_in_few_strata_are_one_formula()
    {
        // 20 groups in 2 strata go by strata; each stratum cut into 15 copies of a fifteenth goes by groups: V is not the same, so compare with the dense solution of few groups.
        var counts = Enumerable.Range(0, 20).SelectMany(i => new[] { new StratumGroup(0, i, 5 + i, 100 + (7 * i)), new StratumGroup(1, i, 30 + ((i * 7) % 11), 90 + i) }).ToArray();
        var many = GeneralAssociation.Test(counts);
        // A thousand empty strata that say nothing change nothing; further informative strata of two groups far away add their own statistic and degree of freedom.
        var away = Enumerable.Range(0, 40).SelectMany(s => new[] { new StratumGroup(10 + s, 50, 3, 40), new StratumGroup(10 + s, 51, 9, 40) }).ToArray();
        var other = GeneralAssociation.Test(away);
        var both = GeneralAssociation.Test([.. counts, .. away]);
        both.Statistic!.Value.Should().BeApproximately(many.Statistic!.Value + other.Statistic!.Value, 1e-9 * both.Statistic.Value);
        both.DegreesOfFreedom.Should().Be(many.DegreesOfFreedom + 1);
        both.DegreesOfFreedom.Should().Be(20);
    }

    [Fact]
    public void Order_labels_and_what_says_nothing_change_nothing_and_a_design_effect_divides() => Drawn.Sample(counts =>
    {
        var result = GeneralAssociation.Test(counts);
        var turned = GeneralAssociation.Test([.. counts.Reverse().Select(c => new StratumGroup(9 - c.Stratum, 20 - c.Group, c.Events, c.Trials)), new StratumGroup(30, 0, 5, 9), new StratumGroup(31, 1, 0, 4)]);
        (turned.Reason == result.Reason && turned.DegreesOfFreedom == result.DegreesOfFreedom && turned.Groups == result.Groups).Should().BeTrue();
        if (result.Statistic is not { } q) return;
        turned.Statistic!.Value.Should().BeApproximately(q, 1e-7 * (1 + q));
        result.PValue!.Value.Should().BeInRange(0, 1);
        GeneralAssociation.Test(counts, 3).Statistic!.Value.Should().BeApproximately(q / 3, 1e-12 * (1 + q));
    }, iter: 300);

    [Fact]
    public void Without_a_stratum_that_compares_nothing_can_be_told()
    {
        GeneralAssociation.Test([]).Reason.Should().Be(UndefinedReason.NoComparableStratum);
        GeneralAssociation.Test([new StratumGroup(0, 0, 3, 9), new StratumGroup(1, 1, 3, 9)]).Reason.Should().Be(UndefinedReason.NoComparableStratum);
        GeneralAssociation.Test([new StratumGroup(0, 0, 0, 9), new StratumGroup(0, 1, 0, 9)]).Reason.Should().Be(UndefinedReason.NoComparableStratum);
        FluentActions.Invoking(() => GeneralAssociation.Test([], 0.5)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new StratumGroup(-1, 0, 0, 1)).Should().Throw<ArgumentOutOfRangeException>();
        FluentActions.Invoking(() => new StratumGroup(0, 0, 2, 1)).Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Chi_square_quantile_and_tail_are_each_others_inverse()
    {
        Quantile.ChiSquare(0.95, 4).Should().BeApproximately(9.487729036781154, 1e-11);
        TailProbability.ChiSquare(9.487729036781154, 4).Should().BeApproximately(0.05, 1e-12);
        TailProbability.Normal(-1.959963984540054).Should().BeApproximately(0.05, 1e-13);
    }

    private static StratumGroup[] Read(string text) =>
        [.. text.Split(':').SelectMany((stratum, s) => stratum.Split(' ').Select((group, g) =>
        {
            var parts = group.Split('/');
            return new StratumGroup(s, g, long.Parse(parts[0], System.Globalization.CultureInfo.InvariantCulture), long.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture));
        }))];
}
