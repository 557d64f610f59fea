using System.Globalization;
using BenchmarkDotNet.Running;
using ScreenStats.Benchmarks;

switch (args)
{
    case ["floor", var file]:
        var (rows, fields, levels) = SplitAndCount.Run(file, countedColumn: 1, threads: 2);
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rows} rows, {fields} fields, {levels} levels"));
        return 0;
    case ["coverage", var file]:
        return CoverageStudy.Run(file);
    case ["ten-million-rows", var runner, var folder, var rounds]:
        return TenMillionRows.Run(runner, folder, int.Parse(rounds, CultureInfo.InvariantCulture));
    case ["person-log", var count, var threads, .. var rest]:
        return PersonLogTimes.Run(
            int.Parse(count, CultureInfo.InvariantCulture), int.Parse(threads, CultureInfo.InvariantCulture), screenIds: rest is ["screen-ids"]);
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        return 0;
}
