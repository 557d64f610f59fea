using System.Globalization;
using System.Runtime.InteropServices;

namespace ScreenStats.Benchmarks.Whole;

/// <summary>
/// The whole main job on exports of 10,000 rows to a hundred million, in turn with the bytes alone, their split, and a general engine's SQL for the
/// counts and links; each a process of its own, the median of the rounds. One file of results a machine, and two pictures of it.
/// </summary>
internal static class GrowthCurve
{
    /// <summary>Runs everything and writes <c>growth.csv</c>, <c>growth-time.svg</c> and <c>growth-memory.svg</c>.</summary>
    /// <param name="runner">The console runner, built for release.</param>
    /// <param name="native">The same as a native program.</param>
    /// <param name="work">A folder for the exports, which are removed again one after the other.</param>
    /// <param name="results">Where the results go.</param>
    /// <param name="powers">The sizes, as powers of ten.</param>
    /// <param name="rounds">Rounds of each size; one fewer for each power above seven, at least one.</param>
    public static int Run(string runner, string native, string work, string results, (int From, int To) powers, int rounds)
    {
        var self = Environment.ProcessPath ?? throw new InvalidOperationException("No path of this process.");
        var runs = new List<WholeRun>();
        for (var power = powers.From; power <= powers.To; power++)
        {
            var folder = Path.Combine(work, $"e{power.ToString(CultureInfo.InvariantCulture)}");
            try
            {
                var wanted = Math.Pow(10, power).ToString("0", CultureInfo.InvariantCulture);
                if (WholeProcess.Run(runner, "synthesize", folder, "--seed", "1", "--runs", wanted).ExitCode != 0) return 1;
                runs.AddRange(Size(runner, native, self, folder, Math.Max(1, rounds - (2 * Math.Max(0, power - 7)))));
            }
            finally
            {
                if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
            }
        }

        Directory.CreateDirectory(results);
        File.WriteAllLines(Path.Combine(results, "growth.csv"), Lines(runs));
        GrowthPictures.Write(runs, results);
        return 0;
    }

    private static IEnumerable<WholeRun> Size(string runner, string native, string self, string folder, int rounds)
    {
        var screening = Path.Combine(folder, "screening.csv");
        var bytes = new FileInfo(screening).Length;
        var rows = File.ReadLines(screening).LongCount() - 1;
        var report = Path.Combine(folder, "report");
        var seen = WholeRun.Ways.ToDictionary(way => way, _ => new List<(double Seconds, double Peak)>(), StringComparer.Ordinal);
        for (var round = 0; round < rounds; round++)
        {
            foreach (var way in WholeRun.Ways)
            {
                var run = way switch
                {
                    "bytes" => WholeProcess.Run(self, "bytes", screening),
                    "split" => WholeProcess.Run(self, "floor", screening),
                    "evaluate" => WholeProcess.Run(runner, "evaluate", folder, "--out", report),
                    "native" => WholeProcess.Run(native, "evaluate", folder, "--out", report),
                    "native-bounded" => WholeProcess.Run(native, "evaluate", folder, "--out", report, "--memory", "1GB"),
                    _ => WholeProcess.Run(self, "duckdb", folder),
                };
                if (run.ExitCode != 0)
                {
                    Console.Error.WriteLine($"{way} ended with {run.ExitCode.ToString(CultureInfo.InvariantCulture)} and is left out.");
                    continue;
                }

                seen[way].Add((run.Seconds, run.PeakMegabytes));
            }
        }

        foreach (var way in WholeRun.Ways.Where(way => seen[way].Count > 0))
        {
            var done = new WholeRun(rows, bytes, way, Median(seen[way].Select(run => run.Seconds)), seen[way].Max(run => run.Peak));
            Console.Out.WriteLine(Line(done));
            yield return done;
        }
    }

    private static IEnumerable<string> Lines(IReadOnlyList<WholeRun> runs)
    {
        yield return $"# {RuntimeInformation.OSDescription}, {Environment.ProcessorCount.ToString(CultureInfo.InvariantCulture)} processors ({RuntimeInformation.ProcessArchitecture}), {RuntimeInformation.FrameworkDescription}";
        yield return "rows,bytes,way,seconds,peak_mib";
        foreach (var run in runs) yield return Line(run);
    }

    private static string Line(WholeRun run) => string.Create(CultureInfo.InvariantCulture, $"{run.Rows},{run.Bytes},{run.Way},{run.Seconds:0.000},{run.PeakMegabytes:0}");

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
