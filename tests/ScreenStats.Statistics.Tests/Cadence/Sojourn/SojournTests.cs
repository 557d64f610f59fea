using ScreenStats.Statistics.Cadence.Sojourn;

namespace ScreenStats.Statistics.Tests.Cadence.Sojourn;

public sealed class SojournTests
{
    private static readonly RepeatedTestPool Pool = new()
    {
        People = 1000, Cases = 10, Sensitivity = 0.5, ProneToFalsePositive = 50, FalsePositiveChance = 0.2, CostOfFirstTest = 4, CostOfFurtherTest = 1, CostOfWorkUp = 100,
    };

    [Fact]
    public void Every_row_of_the_sojourn_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("exponential-sojourn"), row =>
    {
        var (s, mean, incidence, gap) = (row.Number("sensitivity"), row.Number("mean"), row.Number("incidence"), row.Number("gap"));
        return new[]
        {
            row.Mismatch("first", ExponentialSojourn.FirstScreenYield(s, mean, incidence).Value),
            row.Mismatch("interval_incidence", ExponentialSojourn.IntervalIncidence(s, mean, incidence, row.Number("time"))),
            row.Mismatch("interval_share", ExponentialSojourn.IntervalShare(s, mean, gap)),
            row.Mismatch("program", ExponentialSojourn.ProgramSensitivity(s, mean, gap)),
        };
    });

    [Fact]
    public void Every_row_of_the_lead_time_table_is_met() => Mismatches.ShouldBeNone(
        ReferenceTable.Load("lead-times"), row => new[] { row.Mismatch("lead", ExponentialSojourn.MeanLead(row.Number("mean"), row.Number("variance"))) });

    [Fact]
    public void Every_row_of_the_repeated_tests_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("repeated-tests"), row =>
    {
        var pool = new RepeatedTestPool
        {
            People = row.Number("people"), Cases = row.Number("cases"), Sensitivity = row.Number("sensitivity"), ProneToFalsePositive = row.Number("prone"),
            FalsePositiveChance = row.Number("false_positive"), CostOfFirstTest = row.Number("first"), CostOfFurtherTest = row.Number("further"),
            CostOfWorkUp = row.Number("work_up"),
        };
        var step = RepeatedTest.Of(pool, (int)row.Count("tests")).Last();
        return
        [
            row.Mismatch("found", step.Cases), row.Mismatch("false_found", step.FalsePositives), row.Mismatch("cost", step.Cost),
            row.Mismatch("average", step.CostPerCase.Value), row.Mismatch("marginal", step.MarginalCostPerCase.Value),
        ];
    });

    [Fact]
    public void Every_row_of_the_pools_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("pooled-testing"), row => new[]
    {
        row.Mismatch("best", PooledTesting.BestSize(row.Number("prevalence")).Value),
        row.Has("size") ? row.Mismatch("cost", PooledTesting.RelativeCost(row.Count("size"), row.Number("prevalence"))) : null,
    });

    [Fact]
    public void Shorter_gaps_and_better_screens_find_more_before_it_is_evident() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[-3, 3].Select(e => Math.Pow(10, e)), Gen.Double[0, 50], Gen.Double[0, 1]).Sample((s, share, mean, gap, shorter) =>
        {
            var program = ExponentialSojourn.ProgramSensitivity(s, mean, gap);
            var missed = ExponentialSojourn.IntervalShare(s, mean, gap);
            return program is >= 0 and <= 1 && missed is >= 0 and <= 1
                && ExponentialSojourn.ProgramSensitivity(s, mean, gap * shorter) >= program - 1e-12
                && ExponentialSojourn.ProgramSensitivity(s * share, mean, gap) <= program + 1e-12
                && ExponentialSojourn.IntervalShare(s, mean, gap * shorter) <= missed + 1e-12;
        });

    [Fact]
    public void The_limits_of_the_gap_are_met()
    {
        ExponentialSojourn.ProgramSensitivity(0.3, 2, 0).Should().Be(1, "screened without pause nobody is missed for long");
        ExponentialSojourn.ProgramSensitivity(0.3, 2, 1e9).Should().BeApproximately(0, 1e-8);
        ExponentialSojourn.ProgramSensitivity(0, 2, 0).Should().Be(0);
        ExponentialSojourn.IntervalShare(0.3, 2, 0).Should().BeApproximately(0.7, 1e-15);
        ExponentialSojourn.IntervalShare(1, 2, 1e9).Should().BeApproximately(1, 1e-8);
        ExponentialSojourn.IntervalIncidence(0.3, 2, 0.01, 1e9).Should().BeApproximately(0.01, 1e-15);
        ExponentialSojourn.FirstScreenYield(0.3, 200, 0.01).Reason.Should().Be(UndefinedReason.TooLarge);
        ExponentialSojourn.ProgramSensitivity(0.5, 1e-300, 1e9).Should().Be(0);
    }

    [Fact]
    public void The_steps_of_a_repeated_test_add_up() => Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[2, 30]).Sample((s, phi, tests) =>
    {
        var steps = RepeatedTest.Of(Pool with { Sensitivity = s, FalsePositiveChance = phi }, tests);
        var (last, before) = (steps[^1], steps[^2]);
        return last.Cases >= before.Cases && last.FalsePositives >= before.FalsePositives && last.Cost >= before.Cost
            && (last.MarginalCostPerCase.Value is not { } marginal || last.Cases - before.Cases < 1e-6
                || Math.Abs((marginal * (last.Cases - before.Cases)) - (last.Cost - before.Cost)) <= 1e-6 * last.Cost);
    });

    [Fact]
    public void A_step_without_cases_says_so()
    {
        var none = RepeatedTest.Of(Pool with { Cases = 0 }, 2);
        none[0].CostPerCase.Reason.Should().Be(UndefinedReason.NoCases);
        none[1].MarginalCostPerCase.Reason.Should().Be(UndefinedReason.NoCasesAdded);
        RepeatedTest.Of(Pool with { Sensitivity = 1 }, 2)[1].MarginalCostPerCase.Reason.Should().Be(UndefinedReason.NoCasesAdded);
    }

    [Fact]
    public void The_best_pool_beats_its_neighbours_and_single_tests() => Gen.Double[-12, -0.52].Select(e => Math.Pow(10, e)).Sample(p =>
    {
        if (PooledTesting.BestSize(p).Value is not { } best) return p > 0.3066;
        var size = (long)best;
        var cost = PooledTesting.RelativeCost(size, p);
        return cost < 1 && cost <= PooledTesting.RelativeCost(size + 1, p) * (1 + 1e-13) && cost <= PooledTesting.RelativeCost(size - 1, p) * (1 + 1e-13);
    });

    [Fact]
    public void The_best_pool_is_near_one_over_the_root_and_costs_near_twice_the_root() => Gen.Double[-10, -2].Select(e => Math.Pow(10, e)).Sample(p =>
    {
        var size = PooledTesting.BestSize(p).Value!.Value;
        return Math.Abs(size - (1 / Math.Sqrt(p))) <= 1.5 && Math.Abs(PooledTesting.RelativeCost((long)size, p) - (2 * Math.Sqrt(p))) <= 0.7 * p;
    });

    [Fact]
    public void Pools_without_an_answer_say_why()
    {
        PooledTesting.BestSize(0).Reason.Should().Be(UndefinedReason.NobodyInfected);
        PooledTesting.BestSize(1).Reason.Should().Be(UndefinedReason.NoPoolPays);
        PooledTesting.BestSize(1e-300).Reason.Should().Be(UndefinedReason.TooLarge);
        PooledTesting.RelativeCost(1, 0.2).Should().Be(1);
        PooledTesting.RelativeCost(5, 0).Should().Be(0.2);
        PooledTesting.RelativeCost(5, 1).Should().Be(1.2);
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => ExponentialSojourn.ProgramSensitivity(2, 1, 1), "sensitivity"), (() => ExponentialSojourn.ProgramSensitivity(1, 0, 1), "meanSojourn"),
            (() => ExponentialSojourn.IntervalShare(1, 1, -1), "gap"), (() => ExponentialSojourn.IntervalIncidence(1, 1, 1, double.NaN), "time"),
            (() => ExponentialSojourn.FirstScreenYield(1, 1, -1), "incidence"), (() => ExponentialSojourn.MeanLead(1, -1), "variance"),
            (() => ExponentialSojourn.MeanLead(1e-300, 1e18), "variance"),
            (() => RepeatedTest.Of(Pool, 0), "tests"), (() => RepeatedTest.Of(Pool with { Cases = 2000 }, 1), "Cases"), (() => RepeatedTest.Of(Pool with { People = 0 }, 1), "People"),
            (() => RepeatedTest.Of(Pool with { ProneToFalsePositive = 995 }, 1), "ProneToFalsePositive"), (() => RepeatedTest.Of(Pool with { Sensitivity = 2 }, 1), "Sensitivity"),
            (() => PooledTesting.RelativeCost(0, 0.1), "poolSize"), (() => PooledTesting.BestSize(-1), "prevalence"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }
}
