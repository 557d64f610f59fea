using System.Globalization;

namespace ScreenStats.Benchmarks.Whole;

/// <summary>
/// The main job on a large export against the two-thread split-and-count of the same bytes, in turn, in one run:
/// whole processes both, so start-up, report and pictures are in the figure.
/// </summary>
internal static class TenMillionRows
{
    public static int Run(string runner, string folder, int rounds)
    {
        var screening = Directory.GetFiles(folder, "screening*.csv").Order(StringComparer.Ordinal).First();
        var self = Environment.ProcessPath ?? throw new InvalidOperationException("No path of this process.");
        var report = Path.Combine(folder, "report");
        var floors = new List<(double Seconds, double Peak)>();
        var jobs = new List<(double Seconds, double Peak)>();
        for (var round = 0; round <= rounds; round++)
        {
            var floor = WholeProcess.Run(self, "floor", screening);
            var job = WholeProcess.Run(runner, "evaluate", folder, "--out", report);
            if (floor.ExitCode != 0 || job.ExitCode != 0) return 1;
            if (round == 0) continue; // warms the page cache
            floors.Add((floor.Seconds, floor.PeakMegabytes));
            jobs.Add((job.Seconds, job.PeakMegabytes));
            Print(string.Create(CultureInfo.InvariantCulture,
                $"round {round}: floor {floor.Seconds:0.00} s {floor.PeakMegabytes:0} MB, evaluate {job.Seconds:0.00} s {job.PeakMegabytes:0} MB"));
        }

        Print(string.Create(CultureInfo.InvariantCulture,
            $"median: floor {Median(floors.Select(run => run.Seconds)):0.00} s, evaluate {Median(jobs.Select(run => run.Seconds)):0.00} s, ratio {Median(floors.Zip(jobs, (floor, job) => job.Seconds / floor.Seconds)):0.00}, evaluate's peak {jobs.Max(run => run.Peak):0} MB"));
        return 0;
    }

    private static void Print(string line) => Console.Out.WriteLine(line);

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
