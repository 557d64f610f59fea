using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Benchmarks.Whole;

/// <summary>Seconds and peak memory against rows, both axes in powers of ten, drawn as the report draws.</summary>
internal static class GrowthPictures
{
    private const int Height = 420;

    private static readonly double[] Beside = [0.45, 1.9, 0.6, 1.6, 0.3, 2.8];

    private static readonly (string Way, string Name, Tone Tone, bool Dashed)[] Lines =
    [
        ("split", "split and count", Tone.Quiet, false),
        ("evaluate", "evaluate, on .NET", Tone.Main, true),
        ("native", "evaluate, native", Tone.Main, false),
        ("native-bounded", "with --memory 1GB", Tone.Second, true),
        ("duckdb", "SQL, counts and links", Tone.Alert, false),
    ];

    public static void Write(IReadOnlyList<WholeRun> runs, string folder)
    {
        Draw(runs, "growth-time", "Time against rows", "seconds by the clock", static run => run.Seconds, folder);
        Draw(runs, "growth-memory", "Memory against rows", "peak memory, MiB", static run => run.PeakMegabytes, folder);
    }

    /// <summary>The pictures of a file of results.</summary>
    public static int Redraw(string results)
    {
        var runs = File.ReadLines(Path.Combine(results, "growth.csv")).Where(line => line.Length > 0 && char.IsAsciiDigit(line[0])).Select(line => line.Split(','))
            .Select(cells => new WholeRun(long.Parse(cells[0], CultureInfo.InvariantCulture), long.Parse(cells[1], CultureInfo.InvariantCulture), cells[2],
                double.Parse(cells[3], CultureInfo.InvariantCulture), double.Parse(cells[4], CultureInfo.InvariantCulture))).ToList();
        Write(runs, results);
        return 0;
    }

    private static void Draw(IReadOnlyList<WholeRun> runs, string id, string title, string label, Func<WholeRun, double> value, string folder)
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var (from, to) = (runs.Min(run => (double)run.Rows) * 0.8, runs.Max(run => (double)run.Rows) * 1.3);
        var drawn = Lines.Select(line => (Line: line, Runs: runs.Where(run => run.Way == line.Way && value(run) > 0).OrderBy(run => run.Rows).ToList())).Where(one => one.Runs.Count > 0).ToList();
        var (low, high) = (drawn.Min(one => one.Runs.Min(value)) / 1.5, drawn.Max(one => one.Runs.Max(value)) * 2);
        var horizontal = new Axis("rows of the screening export", from, to, Powers(from, to), AxisScale.Logarithmic);
        var vertical = new Axis(label, low, high, Powers(low, high), AxisScale.Logarithmic);
        var places = new LabelPlaces(new PictureArea(horizontal, vertical, Height));
        foreach (var (line, own) in drawn)
        {
            marks.Add(new LineMark([.. own.Select(run => ((double)run.Rows, value(run)))], line.Tone, 2.2, Dashed: line.Dashed));
            foreach (var run in own) marks.Add(new DotMark(run.Rows, value(run), line.Tone));
        }

        foreach (var (_, own) in drawn) places.KeepLine([.. own.Select(run => ((double)run.Rows, value(run)))]);
        foreach (var (line, own) in drawn)
        {
            var others = drawn.Where(one => one.Line != line).SelectMany(one => one.Runs).Select(run => ((double)run.Rows, value(run))).ToList();
            if (Name(places, [.. own.Select(run => ((double)run.Rows, value(run)))], others, line.Name, line.Tone) is { } named) marks.Add(named);
        }

        var chart = new Chart(id, title, "", $"{title}: {string.Join(", ", drawn.Select(one => one.Line.Name))}.", "growth", horizontal, vertical, marks.ToImmutable(), Height);
        File.WriteAllText(Path.Combine(folder, id + ".svg"), ChartRenderer.Svg(chart));
    }

    /// <summary>Along the line, else above or below any of its points, where no point of another line is much nearer.</summary>
    private static LabelMark? Name(LabelPlaces places, (double X, double Y)[] line, List<(double X, double Y)> others, string name, Tone tone) =>
        (line.Length > 1 ? places.Along(line, name, tone) : null)
        ?? line.Reverse().SelectMany(_ => Beside, (at, factor) => (at.X, Y: at.Y * factor, Away: Math.Abs(Math.Log(factor))))
            .Where(place => !others.Exists(other => other.X == place.X && Math.Abs(Math.Log(place.Y / other.Y)) < 0.4 * place.Away))
            .Select(place => places.Place(place.X, place.Y, name, tone)).FirstOrDefault(label => label is not null);

    private static ImmutableArray<Tick> Powers(double from, double to)
    {
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var power = (int)Math.Ceiling(Math.Log10(from)); power <= Math.Log10(to); power++)
        {
            var at = Math.Pow(10, power);
            ticks.Add(new Tick(at, at < 1 ? at.ToString("0.##", CultureInfo.InvariantCulture) : at.ToString("#,0", CultureInfo.InvariantCulture)));
        }

        return ticks.ToImmutable();
    }
}
