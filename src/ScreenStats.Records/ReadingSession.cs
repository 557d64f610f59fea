using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Cache;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Formats;
using ScreenStats.Records.Formats.Converting;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Spilling;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records;

/// <summary>One attempt at reading a program.</summary>
internal sealed class ReadingSession(
    ProgramSettings settings, string folder, ReadOptions options, int threads,
    IReadOnlyDictionary<string, TextEncoding> encodings, SourceFiles sources, Dictionary<ExportKind, (DateOrder? Order, string Why)[]> orders,
    IViews? views = null, ReadingCache? cache = null) : IDisposable
{
    private readonly List<Diagnostic> errors = [];
    private readonly List<Diagnostic> notes = [];
    private readonly List<ExportReading> readings = [];
    private readonly Vocabularies vocabularies = new();
    private readonly List<FileMemory> memories = [];
    private long bytesSplit;
    private long bytesRead;
    private long bytesTold;
    private long bytesTotal;
    private ProgramPlan? plan;
    private RunCounter? counter;

    public ReadingResult Run()
    {
        try
        {
            var result = ReadAndCount();
            if (Changed() is { Count: > 0 } changed) throw new UnusableDataException([.. changed]);
            cache?.Complete();
            result.BytesSplit = bytesSplit;
            result.Cache = cache?.Use(memories.Sum(memory => memory.Files), memories.Sum(memory => memory.Known));
            return result;
        }
        catch (UnusableDataException refusal)
        {
            throw new RefusedReadingException(Changed() is { Count: > 0 } changed ? [.. changed] : refusal.Diagnostics, [.. Enum.GetValues<ExportKind>().Select(Understood)]);
        }
        catch (Exception failure) when (failure is not (OperationCanceledException or OutOfMemoryException or ReadAgainException) && Changed().Count > 0)
        {
            // Rows are looked up a second time by their places, which a file that changed no longer has.
            throw new UnusableDataException([.. Changed()]);
        }
    }

    private IReadOnlyList<Diagnostic> Changed() => sources.Changed() is { Count: > 0 } changed ? changed : [.. cache?.Changed().Select(SourceFiles.ChangedWhileRead) ?? []];

    private ReadingResult ReadAndCount()
    {
        var zone = Zone();
        plan = new ProgramPlan(settings, folder, encodings, sources, errors, notes, views is not null);
        // Without headings that are understood there is nothing to read rows for.
        if (errors.Count > 0) throw Unusable([]);
        bytesTotal = plan.All().Sum(file => file.Plan.Length);
        var hashes = plan.All().DistinctBy(file => (file.Export, file.Plan.SourcePath))
            .Select(file => (file.Export, file.Plan, Hash: HashedByCache(file.Export, file.Plan) ? null : FileHash.Start(file.Plan.SourcePath))).ToList();

        var scale = new TimeScale(zone);
        counter = new RunCounter(settings, vocabularies) { Cancelled = options.CancellationToken, Room = options.Budget is { } budget ? new SpillRoom(budget, new SpillFolder(), threads) : null };
        var screening = Read(plan, ExportKind.Screening, threads, (own, sink) => new ScreeningReader(own, vocabularies, scale, sink, options.SetAsideText), counter.CreateSink, zone)?.Reading;
        counter.GiveBack();
        var confirmatory = Read(plan, ExportKind.Confirmatory, threads, (own, _) => new ConfirmatoryReader(own, vocabularies, scale, options.SetAsideText), zone: zone)?.Reading;
        var controls = Read(plan, ExportKind.Controls, 1, (own, _) => new ControlsReader(own, scale, options.SetAsideText));
        var headcount = Read(plan, ExportKind.Headcount, 1, (_, _) => new HeadcountReader(scale, options.SetAsideText));

        var sites = Read(plan, ExportKind.Sites, 1, (_, _) => new SitesReader(scale, options.SetAsideText));

        CheckOffsets(scale);
        CheckUsable();
        var found = readings.Where(reading => !reading.Broken).SelectMany(reading => reading.Diagnostics(ProgramPlan.Of(settings, reading.Export).DateOrder).Concat(reading.PrivacyDiagnostics())).ToList();
        if (errors.Count > 0 || found.Any(diagnostic => diagnostic.Severity == Severity.Error)) throw Unusable(found);

        var read = views is null ? OfFiles() : views.Count(settings, vocabularies, scale, options, threads);
        found.AddRange(read.Found);
        if (read.Found.Any(diagnostic => diagnostic.Severity == Severity.Error)) throw Unusable(found);
        var counted = read.Counted;

        var siteTable = plan.Files(ExportKind.Sites) is { Count: > 0 } tables ? tables[0].Name : null;
        ImmutableArray<SiteCell> siteCells = [.. sites?.Readers.Cast<SitesReader>().SelectMany(reader => reader.Cells) ?? []];
        var around = SurroundingsFindings.Of(settings, counted.Cells, siteCells, siteTable);
        ImmutableArray<Diagnostic> diagnostics = [.. notes, .. found, .. counted.Cells.Diagnostics, .. around];
        var cells = counted.Cells with
        {
            Controls = [.. counted.Cells.Controls, .. controls?.Readers.Cast<ControlsReader>().SelectMany(reader => reader.Cells) ?? []],
            Headcount = [.. headcount?.Readers.Cast<HeadcountReader>().SelectMany(reader => reader.Cells) ?? []],
            Sites = siteCells,
            Completeness = [.. read.Completeness, .. readings.SelectMany(reading => reading.Completeness())],
            Ledger = [.. counted.Cells.Ledger, .. read.Ledger, .. readings.SelectMany(reading => Ledger(reading, sites?.Readers.Cast<SitesReader>().Sum(reader => reader.Repeated) ?? 0))],
            Diagnostics = diagnostics,
        };
        // A name of a site may stand in any message of the count, so what names people is looked for before one of them is shown.
        var levels = new LevelIdentities(cells, LevelIdentities.Kits(counted.Levels), read.ScreeningName, cells.Audits.IsEmpty ? "" : read.ConfirmatoryName, siteTable ?? "");
        if (levels.Found.Any(diagnostic => diagnostic.Severity == Severity.Error)) throw Unusable([.. found, .. levels.Found]);
        if (diagnostics.Any(diagnostic => diagnostic.Severity == Severity.Error)) throw Unusable([.. found, .. counted.Cells.Diagnostics.Select(levels.Veiled), .. around.Select(levels.Veiled)]);
        if (levels.Found.Count > 0) cells = cells with { Diagnostics = diagnostics = [.. diagnostics.Select(levels.Veiled), .. levels.Found] };
        counter.GiveBack();
        return new ReadingResult(
            Tally.FromCells(cells), diagnostics, views is null ? read.SetAside : [.. read.SetAside, .. readings.SelectMany(reading => reading.SetAside(options.SetAsideText).Select(row => row.Row))],
            [.. hashes.Select(file => new InputFile(Path.GetFileName(file.Plan.SourcePath), file.Export, file.Plan.SourceLength, file.Hash?.WaitAsync(options.CancellationToken).GetAwaiter().GetResult() ?? cache!.HashNow(file.Plan).Sha256))],
            [.. readings.Select(reading => Understanding(reading, counted.Levels, levels.Unshown))]);

        ViewsRead OfFiles()
        {
            var specimens = confirmatory?.Learnt.Specimens;
            specimens?.Sort(static (a, b) => a.Record.CompareTo(b.Record));
            var screeningSource = screening!.Source(new ScreeningReader(settings.Exports.Screening, vocabularies, scale, null, keepText: true));
            var confirmatorySource = confirmatory?.Source(new ConfirmatoryReader(settings.Exports.Confirmatory, vocabularies, scale, keepText: true));
            var counts = counter.Complete(specimens, screeningSource, confirmatorySource, options.AsOf, threads);
            // The count has its own by now, in order.
            specimens?.Clear();
            specimens?.TrimExcess();
            return new(counts, plan.Files(ExportKind.Screening)[0].Name, plan.Files(ExportKind.Confirmatory) is { Count: > 0 } files ? files[0].Name : "")
            {
                SetAside = SetAside(counts, screeningSource, confirmatorySource),
            };
        }
    }

    public void Dispose()
    {
        counter?.Dispose();
        foreach (var reading in readings) reading.Dispose();
        foreach (var memory in memories) memory.Dispose();
    }

    /// <summary>The time zone of a program; null where it states none, or one that is not known.</summary>
    public static TimeZoneInfo? ZoneOf(ProgramSettings settings) =>
        settings.TimeZone is not null && TimeZoneInfo.TryFindSystemTimeZoneById(settings.TimeZone, out var zone) ? zone : null;

    private TimeZoneInfo? Zone()
    {
        if (settings.TimeZone is null) return null;
        if (ZoneOf(settings) is { } zone) return zone;
        errors.Add(new Diagnostic(ReadingDiagnostics.UnknownTimeZone, Severity.Error, "", null, "",
            $"The program file states the time zone \"{settings.TimeZone}\", which is not known. Write an IANA name, such as Europe/Vienna."));
        return null;
    }

    private (ExportReading Reading, IReadOnlyList<RowReader> Readers)? Read(
        ProgramPlan plan, ExportKind export, int count, Func<ExportSettings, IRunSink?, RowReader> create, Func<IRunSink>? createSink = null, TimeZoneInfo? zone = null)
    {
        var plans = plan.Files(export);
        if (plans.Count == 0) return null;
        var own = ProgramPlan.Of(settings, export);
        if (orders.TryGetValue(export, out var settled))
        {
            foreach (var file in plans.Where(file => file.Form.Format != FileFormat.Observations)) file.DateOrders = [.. settled.Select(column => column.Order)];
        }

        var sinks = Enumerable.Range(0, plans.Sum(file => file.Length) < BlockReader.UsualLength ? 1 : count).Select(_ => createSink?.Invoke()).ToList();
        var readers = sinks.Select(sink => create(own, sink)).ToList();
        // The other exports are small, and what one of their files says may rest on another.
        var memory = cache is null || export is not (ExportKind.Screening or ExportKind.Confirmatory) ? null
            : new RowMemory(cache, export, own, zone, vocabularies, plans, sinks, sink => create(own, sink), Told);
        if (memory is not null) memories.Add(memory);
        try
        {
            var reading = new ExportReading(export, plans, readers, Split, errors, memory, options.MostRows);
            readings.Add(reading);
            return (reading, readers);
        }
        catch (OrderUnknownException)
        {
            // Nothing more can be read of an export whose dates are in doubt, but the others are still looked at.
            if (!LookAtDates(export, plans)) return null;
            throw new ReadAgainException(plans[0].Path, plans[0].Encoding);
        }
    }

    private bool LookAtDates(ExportKind export, IReadOnlyList<FilePlan> plans)
    {
        var lookers = Enumerable.Range(0, threads).Select(_ => new DateEvidenceReader(export)).ToList();
        using var memory = cache is null ? null : new DateMemory(cache, export, plans, threads);
        var known = errors.Count;
        using var looked = new ExportReading(export, plans, lookers, Looked, errors, memory);
        if (looked.Broken) return false;
        var evidence = memory?.Evidence ?? lookers[0].Evidence;
        foreach (var other in lookers.Skip(1))
        {
            for (var c = 0; c < evidence.Count; c++) evidence[c].Add(other.Evidence[c]);
        }

        orders[export] = DateOrders.Settle(export, evidence, looked.At, errors);
        return errors.Count == known;
    }

    private void CheckOffsets(TimeScale scale)
    {
        if (scale.HasZone) return;
        var whole = readings.Where(reading => !reading.Broken).ToList();
        var with = whole.Select(reading => reading.First(Finding.WithOffset)).FirstOrDefault(place => place is not null);
        var without = whole.Select(reading => reading.First(Finding.WithoutOffset)).FirstOrDefault(place => place is not null);
        if (with is not { } one || without is not { } other) return;
        errors.Add(new Diagnostic(ReadingDiagnostics.MixedOffsets, Severity.Error, other.File, other.Line, "",
            $"The time {FindingTexts.On(one.File, one.Line)} of {one.File} has an offset from UTC and the time {FindingTexts.On(other.File, other.Line)} of {other.File} has none, "
            + "so they cannot be put in order. State timeZone in the program file, such as \"Europe/Vienna\"."));
    }

    private void CheckUsable()
    {
        foreach (var reading in readings)
        {
            if (reading.Broken || reading.Rows == 0 || reading.SetAsideRows < reading.Rows) continue;
            var name = reading.Export.ToString().ToLowerInvariant();
            errors.Add(new Diagnostic(ReadingDiagnostics.NothingUsable, Severity.Error, "", null, "",
                $"All {FindingTexts.Figure(reading.Rows)} rows of the {name} export were set aside, so nothing can be evaluated. "
                + $"Look at the other messages: often one column is not understood, which the program file can mend (exports.{name})."));
        }
    }

    private static IEnumerable<LedgerCell> Ledger(ExportReading reading, long repeatedSites)
    {
        var repeated = reading.Export == ExportKind.Sites ? repeatedSites : 0;
        yield return new LedgerCell(reading.Export, LedgerEntry.SetAside, reading.SetAsideRows - repeated);
        if (repeated > 0) yield return new LedgerCell(reading.Export, LedgerEntry.Duplicate, repeated);
        if (reading.Export == ExportKind.Controls) yield return new LedgerCell(reading.Export, LedgerEntry.ControlRun, reading.Rows - reading.SetAsideRows);
        if (reading.Export is ExportKind.Headcount or ExportKind.Sites) yield return new LedgerCell(reading.Export, LedgerEntry.Counted, reading.Rows - reading.SetAsideRows);
    }

    private ExportUnderstanding Understood(ExportKind export) =>
        readings.Find(reading => reading.Export == export && !reading.Broken) is { } read ? Understanding(read, new Dictionary<string, CountedLevels>(), new HashSet<string>()) : ExportReading.NotRead(export, plan?.Files(export) ?? [], folder);

    private ExportUnderstanding Understanding(ExportReading reading, IReadOnlyDictionary<string, CountedLevels> counted, IReadOnlySet<string> unshown) => reading.Understanding(
        folder, counted, unshown,
        ProgramPlan.Of(settings, reading.Export).DateOrder,
        column => orders.TryGetValue(reading.Export, out var settled) ? settled[column].Why : "ISO 8601");

    private ImmutableArray<SetAsideRow> SetAside(CountedExports counted, ExportSource screening, ExportSource? confirmatory)
    {
        var all = ImmutableArray.CreateBuilder<SetAsideRow>();
        foreach (var reading in readings)
        {
            var rows = reading.SetAside(options.SetAsideText).ToList();
            var source = reading.Export == ExportKind.Screening ? screening : confirmatory;
            foreach (var removed in counted.Removed)
            {
                if (removed.Export != reading.Export || source is null) continue;
                rows.Add(Removed(removed, source));
            }

            rows.Sort((a, b) => a.Place.CompareTo(b.Place));
            all.AddRange(rows.Select(row => row.Row));
        }

        return all.ToImmutable();
    }

    private (long Place, SetAsideRow Row) Removed(RemovedRow removed, ExportSource source)
    {
        var first = source.Place(removed.First);
        var (place, at, text) = source.Locate(removed.Record);
        var where = first.File == at.File ? FindingTexts.Place(first.File, first.Line) : $"{FindingTexts.Place(first.File, first.Line)} of {first.File}";
        var reason = removed.Code == CountingDiagnostics.Duplicate
            ? $"the same values as {where}"
            : $"the screen_id of {where} with other values";
        return (place, new SetAsideRow(at.File, at.Line, removed.Code, reason, first.Line, options.SetAsideText ? text : null));
    }

    // What a cache has to know of a file is asked of it at the end: it works the hash out when it needs it.
    private bool HashedByCache(ExportKind export, FilePlan file) => cache is not null && file.Path == file.SourcePath && export is (ExportKind.Screening or ExportKind.Confirmatory);

    private void Split(long bytes)
    {
        Interlocked.Add(ref bytesSplit, bytes);
        Told(bytes);
    }

    private void Looked(long bytes)
    {
        Interlocked.Add(ref bytesSplit, bytes);
        options.CancellationToken.ThrowIfCancellationRequested();
    }

    private void Told(long bytes)
    {
        options.CancellationToken.ThrowIfCancellationRequested();
        if (options.Progress is null) return;
        var now = Interlocked.Add(ref bytesRead, bytes);
        var told = Interlocked.Read(ref bytesTold);
        if (now - told < bytesTotal / 200 && now < bytesTotal) return;
        if (Interlocked.CompareExchange(ref bytesTold, now, told) == told) options.Progress.Report(new ReadProgress(now, bytesTotal));
    }

    private UnusableDataException Unusable(IReadOnlyList<Diagnostic> found) => new(
    [
        .. errors, .. found.Where(diagnostic => diagnostic.Severity == Severity.Error),
        .. notes, .. found.Where(diagnostic => diagnostic.Severity != Severity.Error),
    ]);
}
