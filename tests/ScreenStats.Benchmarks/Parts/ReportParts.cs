using BenchmarkDotNet.Attributes;
using ScreenStats.Evaluation;
using ScreenStats.Reporting;
using ScreenStats.Reporting.Charts.Drawing;
using ScreenStats.Reporting.Files.Schema;
using ScreenStats.Reporting.Files.Workbooks;
using ScreenStats.Reporting.Html;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Benchmarks.Parts;

/// <summary>Findings to files: the model of the pages, pictures, the page, the workbook, the figures, and all of it as a folder.</summary>
[MemoryDiagnoser]
public class ReportParts
{
    private readonly Findings found = SampleProgram.Findings;
    private readonly ReportModel model = ReportModel.Of(SampleProgram.Findings, new ReportInputs(), "0");
    private readonly Dictionary<string, string> pictures = new(StringComparer.Ordinal);
    private readonly string folder = Path.Combine(Path.GetTempPath(), $"screenstats-report-parts-{Environment.ProcessId}");

    [GlobalSetup]
    public void Draw()
    {
        foreach (var chart in model.Charts) pictures[chart.Id] = ChartRenderer.Svg(chart);
    }

    [GlobalCleanup]
    public void Remove()
    {
        if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
    }

    [Benchmark(Baseline = true)]
    public void Folder() => Report.Write(found, folder);

    [Benchmark]
    public object Pages() => ReportModel.Of(found, new ReportInputs(), "0");

    [Benchmark]
    public int PicturesAsSvg() => model.Charts.Sum(chart => ChartRenderer.Svg(chart).Length);

    [Benchmark]
    public int PicturesAsPng() => model.Charts.Sum(chart => ChartRenderer.Png(chart).Length);

    [Benchmark]
    public int Page() => ReportHtml.Of(model, pictures).Length;

    [Benchmark]
    public object Figures() => FindingsFile.Of(found);

    [Benchmark]
    public object Sheets() => Workbook.Of(found.Tables);
}
