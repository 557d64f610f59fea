using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Tests.Cadence.Spread;

public sealed class OffspringProcessTests
{
    private static readonly Gen<OffspringProcess> Process = Gen.Select(
        Gen.Double[-2, 1].Select(e => Math.Pow(10, e)), Gen.Double[-3, 3].Select(e => Math.Pow(10, e)), Gen.Bool, Gen.Bool, Gen.Double[0, 1],
        (r, k, poisson, caught, share) => new OffspringProcess(r, poisson ? null : k, caught ? share : 0));

    [Fact]
    public void The_chance_of_dying_out_solves_its_equation() => Process.Sample(process =>
    {
        var q = process.ExtinctionProbability();
        var next = process.CaughtInTime + ((1 - process.CaughtInTime)
            * (process.Dispersion is { } k ? Math.Pow(1 + (process.Reproduction * (1 - q) / k), -k) : Math.Exp(-process.Reproduction * (1 - q))));
        return q is >= 0 and <= 1 && Math.Abs(next - q) <= 1e-12 && (process.MeanOffspring > 1 || q == 1);
    });

    [Fact]
    public void All_sizes_together_have_the_chance_of_dying_out() => Process.Where(p => Math.Abs(p.MeanOffspring - 1) > 0.3).Sample(process =>
    {
        var last = process.CaughtInTime > 0 ? 400 : 5000;
        var sum = Enumerable.Range(1, last - 1).Sum(n => process.SizeProbability(n));
        var beyond = process.AtLeast(last);
        return Math.Abs(sum + beyond - 1) <= 1e-10;
    }, iter: 40);

    [Fact]
    public void Every_row_of_the_offspring_table_is_met() => Mismatches.ShouldBeNone(ReferenceTable.Load("offspring"), row =>
    {
        var process = new OffspringProcess(row.Number("reproduction"), row.Has("dispersion") ? row.Number("dispersion") : null, row.Number("caught"));
        var (introductions, size) = (row.Count("introductions"), row.Count("size"));
        return new[]
        {
            row.Mismatch("extinct", process.ExtinctionProbability(introductions)), row.Mismatch("extinct_by_6", process.ExtinctBy(6, introductions)),
            row.Mismatch("exactly", process.SizeProbability(size, introductions)), row.Mismatch("at_least", process.AtLeast(size, introductions)),
        };
    });

    [Fact]
    public void Screening_and_more_introductions_move_chances_the_right_way() => Gen.Select(Process, Gen.Double[0, 1], Gen.Int[1, 4], Gen.Int[2, 12]).Sample((process, removed, introductions, size) =>
    {
        var thinned = process.Thinned(removed);
        var q = process.ExtinctionProbability();
        return Math.Abs(thinned.MeanOffspring - (process.MeanOffspring * (1 - removed))) <= 1e-12 * process.MeanOffspring
            && thinned.ExtinctionProbability() >= q - 1e-12
            && thinned.AtLeast(size) <= process.AtLeast(size) + 1e-12
            && Math.Abs(process.ExtinctionProbability(introductions) - Math.Pow(q, introductions)) <= 1e-12
            && process.AtLeast(size, introductions) <= process.AtLeast(size, introductions + 1) + 1e-12
            && process.ExtinctBy(size) <= process.ExtinctBy(size + 1) + 1e-15 && process.ExtinctBy(size) <= q + 1e-12;
    });

    [Fact]
    public void The_mean_of_the_sizes_is_the_mean_size() => Process.Where(p => p.MeanOffspring < 0.5 && p.CaughtInTime == 0 && p.Dispersion is null or > 0.05).Sample(process =>
        Math.Abs(Enumerable.Range(1, 4000).Sum(n => n * process.SizeProbability(n)) - process.MeanSize().Value!.Value) <= 1e-9
        && Math.Abs(process.MeanUpToGeneration(500).Value!.Value - process.MeanSize().Value!.Value) <= 1e-12, iter: 30);

    [Fact]
    public void Catching_cases_and_shortening_all_differ_in_outbreaks_though_not_in_the_mean()
    {
        var shortened = new OffspringProcess(2, 1).Thinned(0.4);
        var caught = new OffspringProcess(2, 1, 0.4);
        caught.MeanOffspring.Should().BeApproximately(shortened.MeanOffspring, 1e-15);
        caught.ExtinctionProbability().Should().BeGreaterThan(shortened.ExtinctionProbability() + 0.05, "of the same mean, all or nothing dies out sooner");
    }

    [Fact]
    public void Extremes_have_a_right_answer_or_a_reason()
    {
        var (none, critical, huge) = (new OffspringProcess(0, 0.1), new OffspringProcess(1, 0.1), new OffspringProcess(1e15, 0.1));
        (none.ExtinctionProbability(), none.SizeProbability(1), none.SizeProbability(2), none.AtLeast(5), none.MeanSize().Value).Should().Be((1, 1, 0, 0, 1));
        (critical.ExtinctionProbability(), critical.ExtinctionProbability(0)).Should().Be((1, 1));
        critical.MeanSize().Reason.Should().Be(UndefinedReason.SpreadWithoutBound);
        huge.MeanAfterGenerations(100_000).Reason.Should().Be(UndefinedReason.TooLarge);
        huge.MeanUpToGeneration(100_000).Reason.Should().Be(UndefinedReason.TooLarge);
        huge.ExtinctionProbability().Should().BeInRange(0, 0.03).And.BeApproximately(huge.OffspringProbability(0), 1e-3);
        new OffspringProcess(1e15).ExtinctionProbability().Should().Be(0);
        new OffspringProcess(1e15).AtLeast(1000).Should().Be(1);
        new OffspringProcess(3, 1e-12).ExtinctionProbability().Should().BeApproximately(1, 1e-11, "so uneven that hardly any case infects anybody");
        (none.AtLeast(0), none.AtLeast(0, 0), none.AtLeast(1, 0), none.SizeProbability(0, 0), none.SizeProbability(0)).Should().Be((1, 1, 0, 1, 0));
        none.MeanAfterGenerations(0, 7).Value.Should().Be(7);
        none.MeanSize(0).Value.Should().Be(0);
        new OffspringProcess(5, 0.3, 1).AtLeast(2).Should().Be(0, "all are caught in time");
        new OffspringProcess(5, 0.3, 1).SizeProbability(4, 4).Should().Be(1);
        (none.ExtinctBy(0), none.ExtinctBy(1), none.ExtinctBy(0, 0)).Should().Be((0, 1, 1));
        new OffspringProcess(1, 1).AtLeast(1_000_000).Should().BeInRange(5e-4, 6e-4);
        new OffspringProcess(0.1, 0.5).AtLeast(60).Should().BeInRange(1e-40, 1e-15, "a small chance has digits of its own");
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var process = new OffspringProcess(1, 1);
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new OffspringProcess(-1), "reproduction"), (() => _ = new OffspringProcess(double.NaN), "reproduction"), (() => _ = new OffspringProcess(1, 0), "dispersion"),
            (() => _ = new OffspringProcess(1, double.PositiveInfinity), "dispersion"), (() => _ = new OffspringProcess(1, 1, 1.1), "caughtInTime"), (() => process.Thinned(-0.1), "fractionRemoved"),
            (() => process.OffspringProbability(-1), "infections"), (() => process.ExtinctionProbability(-1), "introductions"), (() => process.ExtinctBy(-1), "generations"),
            (() => process.MeanAfterGenerations(100_001), "generations"), (() => process.MeanUpToGeneration(1, -1), "introductions"), (() => process.MeanSize(-1), "introductions"),
            (() => process.SizeProbability(-1), "size"), (() => process.AtLeast(1_000_001), "size"), (() => new OffspringProcess(1, 1, 0.5).AtLeast(2001), "size"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().Which.ParamName.Should().Be(name);
    }
}
