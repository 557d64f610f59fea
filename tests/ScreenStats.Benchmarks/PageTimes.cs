using System.Diagnostics;
using System.Globalization;
using ScreenStats.Benchmarks.Whole;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Files.Schema;
using ScreenStats.Reporting.Files.Workbooks;
using ScreenStats.Reporting.Html;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Benchmarks;

/// <summary>
/// How long each part of a report takes after the Tally, one after the other: what is evaluated, each page with its pictures and tables, each
/// file. The first round, which compiles, is what somebody at a console waits for; the least of the rounds after it is the work itself. Processor
/// time of the process, so that what else runs on the machine counts for little. Then whole, as <c>evaluate</c> does it, on the threads there are; and
/// with a runner the whole command against <c>inspect</c>, which ends at the Tally, in turn.
/// </summary>
internal static class PageTimes
{
    private const int Rounds = 4;

    public static int Run(string sample, string? runner)
    {
        var clock = new Clock();
        var folder = Path.Combine(Path.GetTempPath(), $"screenstats-page-times-{Environment.ProcessId}");
        var walls = new List<double>();
        try
        {
            for (var round = 0; round < Rounds; round++)
            {
                clock.Round = round;
                var program = ScreeningProgram.Open(sample);
                var tally = clock.Of("reading", "exports to the Tally", () => program.Read().Tally);
                var rooms = new Rooms(clock);
                var findings = Evaluator.Evaluate(tally, program.Settings, rooms, oneByOne: true);
                rooms.End();
                findings = clock.Of("evaluation", "small counts", () => DisclosureControl.Apply(findings));
                Parts(clock, findings);
                var started = Stopwatch.GetTimestamp();
                clock.Of("whole", "evaluated and written, on all threads", () =>
                {
                    Report.Write(Evaluator.Evaluate(tally, program.Settings), folder);
                    return 0;
                });
                walls.Add(Stopwatch.GetElapsedTime(started).TotalMilliseconds);
            }
        }
        finally
        {
            if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
        }

        clock.Print();
        Print($"whole, by the wall clock: {walls[1..].Min():0} ms warm, {walls[1..].Min() / clock.Warm("whole"):0.00} of its processor time");
        if (runner is not null) Command(runner, sample);
        return 0;
    }

    private static void Parts(Clock clock, Findings findings)
    {
        var model = clock.Of("pages", "all of them, as a model", () => ReportModel.Of(findings, new ReportInputs(), "0"));
        var pictures = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var page in model.Groups.SelectMany(group => group.Pages))
        {
            clock.Of("pages", page.Id, () =>
            {
                foreach (var chart in page.Charts.Concat(page.AtTop)) pictures[chart.Id] = ChartRenderer.Svg(chart);
                SectionHtml.Write(new Markup().Open("html").Open("body"), page, model, pictures, []);
                foreach (var view in page.Tables) CsvText.Of(view.Table);
                return 0;
            });
        }

        clock.Of("files", "pictures as .png", () =>
        {
            foreach (var chart in model.Charts) ChartRenderer.Png(chart);
            return 0;
        });
        clock.Of("files", "workbook.xlsx", () => Workbook.Of(findings.Tables));
        clock.Of("files", FindingsFile.FileName, () => FindingsFile.Of(findings));
        var html = clock.Of("files", "report.html, its pictures drawn", () => ReportHtml.Of(model, pictures));
        if (clock.Round == 0) Print($"report.html: {html.Length / 1e6:0.00} million characters");
    }

    /// <summary>The command as a whole process, which compiles what it runs.</summary>
    private static void Command(string runner, string sample)
    {
        var folder = Path.Combine(Path.GetTempPath(), $"screenstats-page-times-{Environment.ProcessId}");
        var (inspect, evaluate) = (new List<double>(), new List<double>());
        try
        {
            for (var round = 0; round < Rounds + 1; round++)
            {
                inspect.Add(WholeProcess.Run("dotnet", runner, "inspect", sample).Seconds);
                evaluate.Add(WholeProcess.Run("dotnet", runner, "evaluate", sample, "--out", folder).Seconds);
            }
        }
        finally
        {
            if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
        }

        var (ends, whole) = (Median(inspect), Median(evaluate));
        Print($"commands by the wall clock, medians of {Rounds + 1}: inspect {ends:0.00} s, evaluate {whole:0.00} s, so {whole - ends:0.00} s after the Tally ({whole / ends:0.0} times inspect)");
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static void Print(FormattableString line) => Console.Out.WriteLine(line.ToString(CultureInfo.InvariantCulture));

    /// <summary>Times by part, in the order in which parts were first seen.</summary>
    private sealed class Clock
    {
        private readonly List<(string Where, string What)> order = [];
        private readonly Dictionary<(string, string), double[]> times = [];

        public int Round { get; set; }

        public T Of<T>(string where, string what, Func<T> work)
        {
            var before = Environment.CpuUsage.TotalTime;
            var result = work();
            Add(where, what, Environment.CpuUsage.TotalTime - before);
            return result;
        }

        public void Add(string where, string what, TimeSpan time)
        {
            if (!times.TryGetValue((where, what), out var rounds))
            {
                order.Add((where, what));
                times.Add((where, what), rounds = new double[Rounds]);
            }

            rounds[Round] += time.TotalMilliseconds;
        }

        public double Warm(string where) => order.Where(part => part.Where == where).Sum(part => times[part][1..].Min());

        public void Print()
        {
            var all = order.Where(part => part.Where is not ("reading" or "whole")).ToList();
            var (cold, warm) = (all.Sum(part => times[part][0]), all.Sum(part => times[part][1..].Min()));
            PageTimes.Print($"{"part",-12}{"",-40}{"cold ms",9}{"share",7}{"warm ms",9}{"share",7}{"times",7}");
            foreach (var part in order)
            {
                var (first, least) = (times[part][0], times[part][1..].Min());
                PageTimes.Print($"{part.Where,-12}{part.What,-40}{first,9:0.0}{first / cold,7:0.0%}{least,9:0.0}{least / warm,7:0.0%}{first / Math.Max(least, 0.1),7:0}");
            }

            PageTimes.Print($"{"after the Tally, one after the other",-52}{cold,9:0}{1,7:0.0%}{warm,9:0}{1,7:0.0%}{cold / warm,7:0}");
        }
    }

    /// <summary>What the evaluator says it is at, as times.</summary>
    private sealed class Rooms(Clock clock) : IProgress<string>
    {
        private string room = "sums";
        private TimeSpan since = Environment.CpuUsage.TotalTime;

        public void Report(string value)
        {
            End();
            room = value;
        }

        public void End()
        {
            var now = Environment.CpuUsage.TotalTime;
            clock.Add("evaluation", room, now - since);
            since = now;
        }
    }
}
