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
}
