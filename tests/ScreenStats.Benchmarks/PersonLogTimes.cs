using System.Diagnostics;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Benchmarks;

/// <summary>
/// Counting alone: rows made in memory, in order of time, handed to two sinks in batches as a reader does. The time to make them is
/// not in the figures.
/// </summary>
internal static class PersonLogTimes
{
    private const int Batch = 16_384;
    private const int People = 100_000;
    private const int Sites = 200;
    private const int Lots = 40;
    private const long Span = 182L * 86_400;
    private const long Start = 820_454_400; // 2026-01-01

    public static int Run(int rows, int threads, bool screenIds)
    {
        for (var round = 0; round < 3; round++) RunOnce(rows, threads, screenIds);
        return 0;
    }

    private static void RunOnce(int rows, int threads, bool screenIds)
    {
        var vocabularies = new Vocabularies();
        for (var site = 0; site < Sites; site++) vocabularies.Sites.Code($"Site {site}");
        for (var lot = 1; lot <= Lots; lot++) vocabularies.Lots.Code($"L{lot}");
        for (var person = 1; person <= 5 * Sites; person++) vocabularies.Operators.Code($"o{person}");
        var source = new MadeRows(rows, screenIds);
        var specimens = Specimens(source, rows);
        GC.Collect();
        var counter = new RunCounter(new ProgramSettings(), vocabularies);
        var making = Cpu(() => Rows(source, rows, threads, _ => _ => { }));
        var (takeWall, take) = (0.0, 0.0);
        take = Cpu(() => takeWall = Rows(source, rows, threads, _ =>
        {
            var sink = counter.CreateSink();
            return batch => sink.Take(batch.Span);
        })) - making;
        var live = GC.GetTotalMemory(forceFullCollection: false) / 1e6;
        CountedExports counted = null!;
        Tally tally = null!;
        var began = Stopwatch.GetTimestamp();
        var complete = Cpu(() => counted = counter.Complete(specimens, source, source, null, threads));
        var completeWall = Stopwatch.GetElapsedTime(began).TotalSeconds;
        began = Stopwatch.GetTimestamp();
        var check = Cpu(() => tally = Tally.FromCells(counted.Cells));
        var checkWall = Stopwatch.GetElapsedTime(began).TotalSeconds;
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{rows} rows, {threads} threads, seconds of processor (of the clock): take {take:0.00} ({takeWall:0.00}), complete {complete:0.00} ({completeWall:0.00}), from cells {check:0.00} ({checkWall:0.00}); {live:0} MB after take, peak {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB; {tally.Cells.Screens.Length} screen cells, {tally.Cells.Operators.Length} operator cells, {tally.Cells.Notable.Length} notable, {specimens.Count} specimens"));
    }

    /// <summary>Makes all rows and hands them on in batches; the longest time any thread spent on what it was handed to.</summary>
    private static double Rows(MadeRows source, int rows, int threads, Func<int, Action<ReadOnlyMemory<RunRow>>> take)
    {
        var taken = new double[threads];
        var next = -1;
        Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, thread =>
        {
            var sink = take(thread);
            var buffer = new RunRow[Batch];
            for (var batch = Interlocked.Increment(ref next); (long)batch * Batch < rows; batch = Interlocked.Increment(ref next))
            {
                var count = Math.Min(Batch, rows - (batch * Batch));
                for (var i = 0; i < count; i++) buffer[i] = source.Read((uint)((batch * Batch) + i));
                var clock = Stopwatch.GetTimestamp();
                sink(buffer.AsMemory(0, count));
                taken[thread] += Stopwatch.GetElapsedTime(clock).TotalSeconds;
            }
        });
        return taken.Max();
    }

    private static double Cpu(Action work)
    {
        var before = Environment.CpuUsage.TotalTime;
        work();
        return (Environment.CpuUsage.TotalTime - before).TotalSeconds;
    }

    private static List<SpecimenRow> Specimens(MadeRows source, int rows)
    {
        var specimens = new List<SpecimenRow>();
        for (var record = 0u; record < rows; record++)
        {
            var run = source.Read(record);
            if (run.Outcome is not (Outcome.Positive or Outcome.Inconclusive) && record % 2000 != 0) continue;
            specimens.Add(new()
            {
                Person = run.Person,
                Instant = run.Instant + 3600,
                Record = (uint)specimens.Count,
                Result = record % 3 == 0 ? ConfirmatoryResult.Positive : ConfirmatoryResult.Negative,
                Reason = run.Outcome == Outcome.Negative ? SpecimenReason.Audit : SpecimenReason.FollowUp,
                Reported = run.Instant + 3600 + (record % 200_000),
                Meaning = record,
            });
        }

        return specimens;
    }

    private sealed class MadeRows(int rows, bool screenIds) : IRowSource
    {
        public RowPlace Place(uint record) => new("screening.csv", record + 2L);

        public bool MeanTheSame(uint first, uint second) => false;

        public bool HaveOneScreenId(uint first, uint second) => false;

        public RunRow Read(uint record)
        {
            var chance = Mix(record);
            var person = (int)(chance % People);
            var instant = Start + (Span * record / rows);
            var site = person % Sites;
            var kind = (chance >> 32) % 1000;
            return new()
            {
                Person = Mix((uint)person + 1_000_000_000),
                Instant = instant,
                Record = record,
                Site = site,
                Lot = 1 + ((site + (int)(instant / 1_209_600)) % Lots),
                Operator = 1 + (5 * site) + (int)((chance >> 50) % 5),
                Outcome = kind < 6 ? Outcome.Positive : kind < 8 ? Outcome.Inconclusive : kind < 14 ? Outcome.Invalid : Outcome.Negative,
                Specimen = Specimen.Nasal,
                Collection = (chance & 7) == 0 ? CollectedBy.Self : CollectedBy.Supervised,
                HasScreenId = screenIds,
                ScreenId = screenIds ? Mix(record + 2_000_000_000) : 0,
                Meaning = chance,
            };
        }

        private static ulong Mix(ulong value)
        {
            value = (value + 1) * 0x9E3779B97F4A7C15ul;
            value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9ul;
            value = (value ^ (value >> 27)) * 0x94D049BB133111EBul;
            return value ^ (value >> 31);
        }
    }
}
