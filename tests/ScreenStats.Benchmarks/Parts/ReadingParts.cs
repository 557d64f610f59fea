using BenchmarkDotNet.Attributes;
using ScreenStats.Benchmarks.Whole;
using ScreenStats.Counting.Cubes;
using ScreenStats.Synthesis;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>Exports to the Tally, everything understood, checked and linked, beside the bytes alone and beside their split on as many threads.</summary>
[MemoryDiagnoser]
public class ReadingParts
{
    private string folder = "";
    private string screening = "";

    /// <summary>About so many runs.</summary>
    [Params(10_000, 100_000, 1_000_000)]
    public int Runs { get; set; }

    [GlobalSetup]
    public void Write()
    {
        folder = Directory.CreateTempSubdirectory("screenstats-reading-").FullName;
        SyntheticProgram.Write(SynthesisPlan.Standard.ScaledTo(Runs), seed: 1, folder);
        screening = Path.Combine(folder, "screening.csv");
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(folder, recursive: true);

    [Benchmark]
    public long Bytes()
    {
        using var file = File.OpenHandle(screening);
        var buffer = new byte[1 << 20];
        var sum = 0L;
        for (long at = 0, read; (read = RandomAccess.Read(file, buffer, at)) > 0; at += read) sum += read + buffer[0];
        return sum;
    }

    [Benchmark(Baseline = true)]
    public long Split() => SplitAndCount.Run(screening, countedColumn: 1, threads: 2).Rows;

    [Benchmark]
    public Tally Read() => ScreeningProgram.Open(folder).Read().Tally;
}
