using System.CommandLine;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Programs;
using ScreenStats.Records;

namespace ScreenStats.Cli.Commands;

/// <summary>What the commands that read a program share: the argument, the date, the threads and the memory.</summary>
internal abstract class ProgramCommand : RunnerCommand
{
    private const long ManyRows = 2_000_000;

    private readonly Argument<string> program;
    private Option<string>? asOf;
    private Option<string>? threads;
    private Option<string>? memory;
    private Option<string>? cache;

    protected ProgramCommand(string name, string summary, params string[] examples)
        : base(name, summary, examples) =>
        program = TakeArgument("program", "A folder with exports, or the program.json beside them.");

    /// <summary>Options of reading; called where the help should list them.</summary>
    protected void TakeReadingOptions()
    {
        asOf = TakeOption("--as-of", "date", "The data are complete up to the end of this day, such as 2026-03-31. Default: as the program file says, else the latest report or collection in the confirmatory export.");
        TakeResources();
    }

    /// <summary>The options of reading that go with any other.</summary>
    protected void TakeResources()
    {
        threads = TakeOption("--threads", "number", "Threads for reading. Default: one for each processor. The result does not depend on it.");
        memory = TakeOption("--memory", "size", "Memory to aim at, such as 512MB or 1.5GB (1 MB = 1,048,576 bytes), at least 256MB: rows that do not fit go into temporary files, about 30 bytes each, on a disk that TMPDIR can name. Not bounded: names of kits, runs that are not negative, specimens, rows set aside, and the evaluation. Default: no bound. The result does not depend on it.");
        cache = TakeOption("--cache", "folder", "Keep what was read of the screening and confirmatory exports in this folder, so that the next run reads only files whose content is new. The result does not depend on it. The folder is as confidential as the exports, and may be deleted at any time.");
    }

    protected string AsOf(Invocation invocation) => asOf is null ? "" : invocation.Text(asOf) ?? "";

    /// <summary>The program as written on the line, with the date from the line.</summary>
    protected ScreeningProgram Open(Invocation invocation)
    {
        StatedMoment? moment = AsOf(invocation) is { Length: > 0 } written
            ? new StatedMoment(Figures.Day("--as-of", written).ToDateTime(new TimeOnly(23, 59, 59)), null)
            : null;
        var opened = ScreeningProgram.Open(invocation.Environment.PathOf(invocation.Text(program)));
        return moment is null ? opened : opened.With(opened.Settings with { DataAsOf = moment });
    }

    protected Reading Read(Invocation invocation, ScreeningProgram opened, bool setAsideText = false)
    {
        var count = threads is not null && invocation.Text(threads) is { } text ? (int)Figures.Whole("--threads", text, 1, 1024) : 0;
        long? bound = memory is not null && invocation.Text(memory) is { } size ? Sizes.Memory("--memory", size, ReadOptions.LeastMemory) : null;
        invocation.Environment.Cancelled.ThrowIfCancellationRequested();
        var options = new ReadOptions { Threads = count, Memory = bound, Progress = invocation.Progress, SetAsideText = setAsideText, CancellationToken = invocation.Environment.Cancelled, Cache = Cache(invocation) };
        var reading = invocation.Progress.During(() => opened.Read(options));
        invocation.Environment.Cancelled.ThrowIfCancellationRequested();
        if (reading.Result.Cache is { } used) Say(invocation, used);
        else if (options.Cache is not null) invocation.Say("note: the rows of this program are in a database, so nothing was kept in the cache.");
        if (reading.Tally.Cells.Ledger.Sum(cell => cell.Rows) >= ManyRows)
        {
            // What reading many rows needed goes back to the system before the evaluation needs memory of its own.
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        }

        return reading;
    }

    private static void Say(Invocation invocation, CacheUse used)
    {
        var files = used.Files == 1 ? "file" : "files";
        var rest = used.Files - used.FromCache;
        invocation.Say($"note: {Show.Count(used.FromCache)} of {Show.Count(used.Files)} {files} came from the cache, {(rest == 0 ? "none was" : rest == 1 ? "1 was" : $"{Show.Count(rest)} were")} read.");
        foreach (var text in used.Notes) invocation.Say($"warning: {text}");
    }

    private string? Cache(Invocation invocation) =>
        cache is not null && invocation.Text(cache) is { } folder ? invocation.Environment.OutputPathOf("--cache", folder) : null;
}
