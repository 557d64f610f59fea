using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Comparisons;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Reporting;
using ScreenStats.Testing.Programs;

namespace ScreenStats.Benchmarks;

/// <summary>
/// A thousand sites over five years of days against the sample data, in turn, in one run: evaluating each whole, and sites compared and the trend
/// alone. Processor time, so that what else runs on the machine counts for little; the first round of each, which compiles, is shown apart.
/// </summary>
internal static class ThousandSites
{
    private const int Sites = 1000;
    private const int Regions = 25;
    private const int Rounds = 1;
    private const int Weeks = 261;

    public static int Run(string sample, string folder, IReadOnlyList<ReportPeriod> periods)
    {
        var program = ScreeningProgram.Open(sample);
        var small = new Case("sample", program.Read().Tally, program.Settings);
        small.Measure();
        var large = Draw();
        Print($"drawn: {large.Screens.Select(cell => cell.Site).Distinct().Count()} sites, {large.Screens.Select(cell => cell.Day).Distinct().Count()} days, {large.Screens.Sum(cell => cell.Runs)} runs, {large.Screens.Length} screen cells, {large.Notable.Length} notable runs");
        foreach (var period in periods)
        {
            var settings = Settings(period);
            var big = new Case(period.ToString(), Tally.FromCells(large with { Period = period }), settings);
            big.Measure();
            for (var round = 0; round < Rounds; round++)
            {
                small.Measure();
                big.Measure();
            }

            Print($"by {period}, times the sample: whole {big.Whole / small.Whole:0.0}, sites compared {big.Comparison / small.Comparison:0.0}, trend {big.Trend / small.Trend:0.0}; the two together are {(big.Comparison + big.Trend) / big.Whole:0.00} of the whole");
            var report = Path.Combine(folder, period.ToString());
            var writing = Cpu(() => Report.Write(big.Findings, report));
            Print($"by {period}: report written in {writing:0.00} s, report.html {new FileInfo(Path.Combine(report, "report.html")).Length / 1e6:0.00} MB, all files {Directory.GetFiles(report, "*", SearchOption.AllDirectories).Sum(file => new FileInfo(file).Length) / 1e6:0.0} MB");
        }

        return 0;
    }

    private static ProgramSettings Settings(ReportPeriod period) => new ProgramSettings
    {
        Title = "A thousand drawn sites (fictional)",
        Screens =
        [
            new() { Name = "Halvet strip", Lots = ["L-0*", "L-2*"], RunsPerKit = 25 },
            new() { Name = "Dorrin card", Lots = ["L-1*"], RunsPerKit = 20 },
            new() { Name = "Morrel tube", Lots = ["L-3*", "L-4*"], RunsPerKit = 20 },
        ],
        Report = new ReportSettings { Period = period },
    };

    private static TallyCells Draw()
    {
        var drawn = ProgramDraw.Of(
            new DrawnPlan
            {
                Sites = Sites, Weeks = Weeks, Lots = 40, Runs = 20 * Sites * Weeks, PersonCorrelation = 0.02, SiteCorrelation = 0.0005, WithoutLot = 0.01, FollowThrough = (0.85, 0.98),
            },
            seed: 1).Cells;
        return drawn with
        {
            Sites = [.. drawn.Screens.Select(cell => cell.Site).Distinct().Order(StringComparer.Ordinal).Select((site, i) => new SiteCell(site, $"Region-{(i % Regions) + 1:00}"))],
        };
    }

    private static double Cpu(Action work)
    {
        GC.Collect();
        var before = Environment.CpuUsage.TotalTime;
        work();
        return (Environment.CpuUsage.TotalTime - before).TotalSeconds;
    }

    private static void Print(FormattableString line) => Console.Out.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    /// <summary>A tally and the least times seen.</summary>
    private sealed class Case(string name, Tally tally, ProgramSettings settings)
    {
        private int round;

        public Findings Findings { get; private set; } = null!;

        public double Whole { get; private set; } = double.MaxValue;

        public double Comparison { get; private set; } = double.MaxValue;

        public double Trend { get; private set; } = double.MaxValue;

        public void Measure()
        {
            var whole = Cpu(() => Findings = Evaluator.Evaluate(tally, settings));
            string[] Flagged(Flag flag) => [.. Findings.Lots.Where(lot => lot.Flag.HasFlag(flag)).Select(lot => lot.Lot)];
            var people = new PersonSums(tally);
            var comparison = Cpu(() => ComparisonAnalysis.Of(tally, people, settings, Flagged(Flag.Refuted), Flagged(Flag.Invalid)));
            var trend = Cpu(() => TrendAnalysis.Of(tally, settings, Findings.Lots));
            Print($"{name}, round {round}: whole {whole:0.000} s, sites compared {comparison:0.000} s, trend {trend:0.000} s");
            if (round++ == 0) return;
            (Whole, Comparison, Trend) = (Math.Min(Whole, whole), Math.Min(Comparison, comparison), Math.Min(Trend, trend));
        }
    }
}
