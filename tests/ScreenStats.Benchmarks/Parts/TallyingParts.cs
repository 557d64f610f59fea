using BenchmarkDotNet.Attributes;
using ScreenStats.Counting.Cubes;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>Cells to a Tally: brought into order, added up, and held against one another; and what was known on a day, from it.</summary>
[MemoryDiagnoser]
public class TallyingParts
{
    private readonly TallyCells inOrder = SampleProgram.Tally.Cells;
    private TallyCells mixed = new();

    [GlobalSetup]
    public void Mix()
    {
        var order = new Random(1);
        mixed = inOrder with { Screens = [.. inOrder.Screens.OrderBy(_ => order.Next())], Operators = [.. inOrder.Operators.OrderBy(_ => order.Next())] };
    }

    [Benchmark(Baseline = true)]
    public Tally InOrder() => Tally.FromCells(inOrder);

    [Benchmark]
    public Tally Mixed() => Tally.FromCells(mixed);

    [Benchmark]
    public object AsOf() => SampleProgram.Tally.AsOf(SampleProgram.Tally.LastDay!.Value.AddDays(-28));
}
