using System.Globalization;
using BenchmarkDotNet.Running;
using ScreenStats.Benchmarks;
using ScreenStats.Benchmarks.Parts;
using ScreenStats.Benchmarks.Whole;
using ScreenStats.Counting.Cubes;

switch (args)
{
    case ["floor", var file]:
        var (rows, fields, levels) = SplitAndCount.Run(file, countedColumn: 1, threads: 2);
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rows} rows, {fields} fields, {levels} levels"));
        return 0;
    case ["bytes", var file]:
        Console.Out.WriteLine(RawBytes.Run(file, threads: 2).ToString(CultureInfo.InvariantCulture));
        return 0;
    case ["growth", var runner, var native, var work, var results, var from, var to, var rounds]:
        return GrowthCurve.Run(runner, native, work, results, (int.Parse(from, CultureInfo.InvariantCulture), int.Parse(to, CultureInfo.InvariantCulture)), int.Parse(rounds, CultureInfo.InvariantCulture));
    case ["growth-pictures", var results]:
        return GrowthPictures.Redraw(results);
#if WAREHOUSE // built with -p:Warehouse=true
    case ["duckdb", var folder]:
        return ScreenStats.Benchmarks.DuckDb.DuckCounts.Run(folder, threads: 2);
#endif
    case ["coverage", var file]:
        return CoverageStudy.Run(file);
    case ["ten-million-rows", var runner, var folder, var rounds]:
        return TenMillionRows.Run(runner, folder, int.Parse(rounds, CultureInfo.InvariantCulture));
    case ["person-log", var count, var threads, .. var rest]:
        return PersonLogTimes.Run(
            int.Parse(count, CultureInfo.InvariantCulture), int.Parse(threads, CultureInfo.InvariantCulture), screenIds: rest is ["screen-ids"]);
    case ["thousand-sites", var sample, var folder, .. var periods]:
        return ThousandSites.Run(sample, folder, periods.Length == 0 ? [ReportPeriod.Week, ReportPeriod.Day] : [.. periods.Select(period => Enum.Parse<ReportPeriod>(period, ignoreCase: true))]);
    case ["page-times", var sample, .. var runners]:
        return PageTimes.Run(sample, runners.FirstOrDefault());
    case ["courses"]:
        return CourseTimes.Run();
    case ["choice", var sample]:
        return ChoiceTimes.Run(sample);
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, PartConfig.Instance);
        return 0;
}
