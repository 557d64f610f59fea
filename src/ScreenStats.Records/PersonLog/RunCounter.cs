using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Identifiers;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;
using ScreenStats.Records.PersonLog.Spilling;
using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog;

/// <summary>Turns valid rows into counts. One sink for each reading thread, then one call of <see cref="Complete"/>.</summary>
/// <param name="settings">The program file.</param>
/// <param name="vocabularies">The texts behind the rows' codes.</param>
internal sealed class RunCounter(ProgramSettings settings, Vocabularies vocabularies) : IDisposable
{
    /// <summary>
    /// The earliest instant a row may have, 1970-01-01 on the scale of <see cref="RunRow.Instant"/>: the log keeps 32 bits.
    /// A date outside is no date of a screening program: the reader sets the row aside as unreadable.
    /// </summary>
    public const long EarliestInstant = -946_684_800;

    /// <summary>The latest instant a row may have, in February 2106.</summary>
    public const long LatestInstant = EarliestInstant + uint.MaxValue;

    // That of six million rows.
    private const long MuchHeld = 128L << 20;

    private readonly Lock gate = new();
    private readonly List<RunSink> sinks = [];
    private bool completed;

    /// <summary>Stops the counting between two of its pieces.</summary>
    public CancellationToken Cancelled { get; init; }

    /// <summary>Bounds what rows take in memory; null (default): nothing does.</summary>
    public SpillRoom? Room { get; init; }

    /// <summary>Where people are mostly counted elsewhere, what is added to the log's own; null where the log holds every row.</summary>
    public ICountedElsewhere? Elsewhere { get; set; }

    /// <summary>A sink for one thread. May be called from any thread.</summary>
    public IRunSink CreateSink()
    {
        var sink = new RunSink(settings, vocabularies, Room);
        lock (gate) sinks.Add(sink);
        return sink;
    }

    /// <summary>
    /// Counts, once every sink has taken its rows. Rows are read again from several threads, never from two at once.
    /// </summary>
    /// <param name="specimens">Valid rows of the confirmatory export, in file order; null without that export.</param>
    /// <param name="screeningRows">The screening export, for the few rows needed twice.</param>
    /// <param name="confirmatoryRows">The confirmatory export; null only without one.</param>
    /// <param name="asOf">A moment stated on the command line; goes before the program file's.</param>
    /// <param name="threads">Number of threads, at least 1. Decides how fast, never what.</param>
    /// <exception cref="InvalidOperationException">Called twice: the log is used up by counting.</exception>
    public CountedExports Complete(
        IReadOnlyList<SpecimenRow>? specimens, IRowSource screeningRows, IRowSource? confirmatoryRows, StatedMoment? asOf, int threads)
    {
        if (completed) throw new InvalidOperationException("The rows have been counted already.");
        completed = true;
        WriteRest();
        GiveBack();
        // First, for their memory is free then.
        var removed = ScreenIdCheck.Find([.. sinks.Select(sink => sink.ScreenIds)], Written(sinks, sink => sink.WrittenIds), screeningRows, threads, Cancelled);
        var index = new SpecimenIndex(specimens, confirmatoryRows, settings.Policy.ReportLagHours);
        foreach (var person in Elsewhere?.Known ?? [])
        {
            if (index.Of(person) is { Count: > 0 } of) index.Meet(of.Start);
        }

        var removedBefore = new RecordSet();
        foreach (var row in removed) removedBefore.Add(row.Record);

        var shapes = new ShapeTable();
        var codes = sinks.Select(sink => Translate(sink.Shapes, shapes)).ToArray();
        var complete = AsOf.Of(asOf, settings, index);
        var lag = Lag(index);
        var lagSeconds = lag ?? (long)Math.Floor(settings.Policy.ReportLagHours * 3600);
        var span = SpanOfProgram.Of(sinks, settings, asOf, complete);
        var scan = Scan(index, shapes, codes, removedBefore, screeningRows, complete?.Instant, lagSeconds, span, threads);
        GiveBack();
        removed.AddRange(scan.Removed);
        removed.Sort(static (a, b) => a.Record.CompareTo(b.Record));

        Cancelled.ThrowIfCancellationRequested();
        var cubes = new CubeAssembly(settings, vocabularies, index, shapes, scan);
        cubes.Add(sinks, codes, removed, screeningRows);
        index.Removed.Sort(static (a, b) => a.Record.CompareTo(b.Record));
        Cancelled.ThrowIfCancellationRequested();
        var counted = cubes.ToCells(screeningRows, threads, Cancelled);
        var cells = counted with
        {
            Period = settings.Report.Period,
            DataAsOf = complete?.Local ?? cubes.LastRun,
            ReportingLagHours = lagSeconds / 3600.0,
            ReportingLagFromData = lag is not null,
            HasConfirmatory = index.HasExport,
            Diagnostics = Findings(index, removed, scan, screeningRows, confirmatoryRows, counted, span, cubes, shapes),
        };
        return new(cells, [.. removed, .. index.Removed]) { Levels = Levels(cubes) };
    }

    /// <summary>
    /// Where memory is bounded, or much of it is held for rows, gives back what a step has left behind before the next one takes its own:
    /// some hundred megabytes of a hundred million rows.
    /// </summary>
    public void GiveBack()
    {
        if (Room is null && sinks.Sum(sink => sink.Log.Bytes) < MuchHeld) return;
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
    }

    /// <summary>Gives memory and temporary files back, whether rows were counted or not.</summary>
    public void Dispose()
    {
        foreach (var sink in sinks)
        {
            sink.Log.Dispose();
            sink.ScreenIds.Dispose();
            sink.Checks.KitDays.Dispose();
        }

        Room?.Dispose();
    }

    /// <summary>Where a part of the rows was written away, all of them are: so their memory is free, and there is one way to look at them.</summary>
    private void WriteRest()
    {
        if (sinks.Exists(sink => sink.WrittenLog is not null)) sinks.ForEach(sink => sink.WriteLog());
        if (sinks.Exists(sink => sink.WrittenIds is not null)) sinks.ForEach(sink => sink.WriteIds());
    }

    private static List<PartitionSpill<T>>? Written<T>(List<RunSink> sinks, Func<RunSink, PartitionSpill<T>?> of) where T : unmanaged =>
        sinks.Exists(sink => of(sink) is not null) ? [.. sinks.Select(sink => of(sink)!)] : null;

    private Dictionary<string, CountedLevels> Levels(CubeAssembly cubes)
    {
        var (sites, lots, kits) = (new bool[vocabularies.Sites.Count], new bool[vocabularies.Lots.Count], new bool[vocabularies.Kits.Count]);
        for (var site = 0; site < sites.Length; site++) sites[site] = cubes.Checks.FirstOfSite(site) != uint.MaxValue;
        for (var lot = 1; lot < lots.Length; lot++) lots[lot] = cubes.Checks.FirstOfLot(lot) != uint.MaxValue;
        foreach (var kit in cubes.Kits.Counted) kits[kit] = true;
        return new(StringComparer.Ordinal)
        {
            [Understanding.CanonicalColumns.Site] = new(vocabularies.Sites, sites),
            [Understanding.CanonicalColumns.Lot] = new(vocabularies.Lots, lots),
            [Understanding.CanonicalColumns.Kit] = new(vocabularies.Kits, kits),
        };
    }

    private System.Collections.Immutable.ImmutableArray<Counting.Diagnostics.Diagnostic> Findings(
        SpecimenIndex index, List<RemovedRow> removed, PartitionScan scan, IRowSource screeningRows, IRowSource? confirmatoryRows, TallyCells counted, SpanOfProgram span,
        CubeAssembly cubes, ShapeTable shapes)
    {
        var found = new FoundDiagnostics();
        CountingFindings.Add(found, index, removed, scan, screeningRows, confirmatoryRows, counted);
        new SenseFindings(settings, index, scan, cubes, screeningRows, found).Add(span, confirmatoryRows);
        new LevelFindings(vocabularies, shapes, scan, cubes, counted, screeningRows, found).Add(index.HasExport);
        return found.All.ToImmutable();
    }

    private static int[] Translate(ShapeTable from, ShapeTable to)
    {
        var codes = new int[from.Count];
        for (var code = 0; code < codes.Length; code++) codes[code] = to.Code(from[code]);
        return codes;
    }

    private static long? Lag(SpecimenIndex index)
    {
        var lags = new List<long>();
        foreach (ref readonly var row in index.Rows.AsSpan())
        {
            if (SpecimenIndex.Report(row) is { } report) lags.Add(ReportingLag.Seconds(SpecimenIndex.Time(row), report));
        }

        return ReportingLag.NearestRank(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(lags));
    }

    private PartitionScan Scan(
        SpecimenIndex index, ShapeTable shapes, int[][] codes, RecordSet removedBefore, IRowSource source, long? dataAsOf, long lagSeconds,
        SpanOfProgram span, int threads)
    {
        var infos = new ShapeInfo[shapes.Count];
        for (var code = 0; code < infos.Length; code++) infos[code] = new(shapes[code]);
        var (first, last) = (int.MaxValue, int.MinValue);
        foreach (var sink in sinks)
        {
            first = Math.Min(first, sink.FirstDay);
            last = Math.Max(last, sink.LastDay);
        }

        var sampling = AuditSampling.Of(index, shapes, vocabularies, settings.Audits);
        Elsewhere?.Begin(sampling);
        var calendar = first > last ? new Calendar(0, 0, settings.Report.Period) : new Calendar(first, last, settings.Report.Period);
        var (siteCount, lotCount) = (vocabularies.Sites.Count, vocabularies.Lots.Count);
        var within = (int)Math.Min(FollowUpWindow.OfFollowUp(settings.Policy).WithinSeconds / 60, int.MaxValue / 4);
        var (nearestFrom, nearestTo) = (-(60 * ShiftedClockRule.MostHours) - ShiftedClockRule.MinutesBefore, within + (60 * ShiftedClockRule.MostHours));
        var clock = ReportClock.Of(index, settings, first, last);
        var reading = new Lock();
        PartitionScan? whole = null;
        var written = Written(sinks, sink => sink.WrittenLog);
        if (written is not null) sinks.ForEach(sink => sink.Log.Dispose());
        var log = new LogPieces([.. sinks.Select(sink => sink.Log)], written, Room?.Scan ?? 0, threads);
        Workers.Run(log.Threads, PartitionedBuffer<LogEntry>.Partitions,
            () => new PartitionScan(
                infos, index, new PersonLinkage(settings.Policy, index.HasExport ? dataAsOf : null, lagSeconds),
                new PersonSums(calendar, siteCount, lotCount), removedBefore, new TwinFinder(source, reading),
                new PersonChecks(span.First, span.Last, span.LastSecond, nearestFrom, nearestTo), settings.Policy, clock, sampling?.Sums(), Elsewhere),
            (worker, partition) => worker.Scan(log, codes, partition),
            worker =>
            {
                if (whole is null) whole = worker;
                else whole.Add(worker);
            },
            Cancelled);
        sinks.ForEach(sink => sink.Log.Dispose());
        written?.ForEach(spill => spill.Dispose());
        Elsewhere?.AddTo(whole!);
        return whole!;
    }
}
