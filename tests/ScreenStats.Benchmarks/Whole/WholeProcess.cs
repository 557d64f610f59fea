using System.Diagnostics;
using System.Globalization;

namespace ScreenStats.Benchmarks.Whole;

/// <summary>Runs a command as a whole process: wall seconds and the kernel's own peak of resident memory.</summary>
internal static class WholeProcess
{
    public static (double Seconds, double PeakMegabytes, int ExitCode) Run(string command, params string[] arguments)
    {
        var start = new ProcessStartInfo(command, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{command} did not start.");
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        var peak = 0.0;
        while (!process.WaitForExit(5)) peak = Math.Max(peak, Peak(process.Id));
        var seconds = clock.Elapsed.TotalSeconds;
        Task.WaitAll(output, errors);
        if (process.ExitCode != 0) Console.Error.WriteLine(errors.Result);
        return (seconds, peak, process.ExitCode);
    }

    private static double Peak(int process)
    {
        try
        {
            foreach (var line in File.ReadLines($"/proc/{process}/status"))
            {
                if (line.StartsWith("VmHWM:", StringComparison.Ordinal))
                {
                    return double.Parse(line.AsSpan(6).Trim().TrimEnd("kB").Trim(), CultureInfo.InvariantCulture) / 1024;
                }
            }
        }
        catch (IOException)
        {
            // The process ended between the two looks; the last peak stands.
        }

        return 0;
    }
}
