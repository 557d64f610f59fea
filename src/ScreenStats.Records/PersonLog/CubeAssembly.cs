using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;
using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog;

/// <summary>Brings together what streamed by and what the scan found, takes the removed rows off again, and writes the cubes.</summary>
internal sealed class CubeAssembly(
    ProgramSettings settings, Vocabularies vocabularies, SpecimenIndex specimens, ShapeTable shapes, PartitionScan scan)
{
    private readonly CountTable screens = new(4096);
    private readonly CountTable operators = new(4096);
    private readonly CountTable conduct = new(16);
    private readonly long[] ledger = new long[Enum.GetValues<LedgerEntry>().Length];
    private readonly List<NotableRow> notable = [];
    private readonly RecordSet gone = new();
    private readonly List<KitDays> kitDays = [];
    private KitSums? kits;

    /// <summary>What the checks of conduct and sense need of rows one by one.</summary>
    public RowChecks Checks { get; } = new();

    /// <summary>What kits say; after <see cref="ToCells"/>.</summary>
    public KitSums Kits => kits!;

    /// <summary>Rows that were taken out again.</summary>
    public RecordSet Gone => gone;

    /// <summary>The counted rows that are not negative, by record.</summary>
    public IReadOnlyList<NotableRow> NotableRows => notable;

    /// <summary>Local time of the latest notable or counted run's day; null where nothing was counted.</summary>
    public DateTime? LastRun { get; private set; }

    /// <summary>Adds the sinks and counts the removed rows off.</summary>
    public void Add(IReadOnlyList<RunSink> sinks, int[][] codes, List<RemovedRow> removed, IRowSource source)
    {
        for (var i = 0; i < sinks.Count; i++) Add(sinks[i], codes[i]);
        if (removed.Count > 0)
        {
            var off = new RunSink(settings, vocabularies);
            foreach (var row in removed)
            {
                off.Count(source.Read(row.Record), -1, out _);
                gone.Add(row.Record);
                ledger[(int)(row.Code == CountingDiagnostics.Duplicate ? LedgerEntry.Duplicate : LedgerEntry.SetAside)]++;
            }

            notable.RemoveAll(row => gone.Contains(row.Record));
            Add(off, [.. Enumerable.Range(0, off.Shapes.Count).Select(code => shapes.Code(off.Shapes[code]))]);
        }

        notable.Sort(static (a, b) => a.Record.CompareTo(b.Record));
    }

    /// <summary>The cubes.</summary>
    public TallyCells ToCells(IRowSource source, int threads, CancellationToken cancelled)
    {
        kits = KitSums.Of(kitDays, () => new DeviceOfLot(settings, vocabularies), gone, threads, cancelled);
        var writer = new CubeWriter(shapes, vocabularies, settings);
        scan.Results.Sort(static (a, b) => a.Record.CompareTo(b.Record));
        var (runs, controls) = (ImmutableArray<NotableRun>.Empty, ImmutableArray<ControlCell>.Empty);
        var operatorCells = ImmutableArray<OperatorCell>.Empty;
        var screenCells = ImmutableArray<ScreenCell>.Empty;
        var settlements = ImmutableArray<SettlementCell>.Empty;
        Workers.Run(threads, 2, static () => 0, (_, piece) =>
        {
            if (piece == 1) screenCells = writer.Screens(screens, scan.FollowUps);
            else
            {
                (runs, controls, settlements, var followed) = Notable(writer, source);
                operatorCells = writer.Operators(operators, followed);
            }
        }, static _ => { }, cancelled);
        var audits = Audits();
        var products = audits.IsEmpty ? [] : scan.Audits!.Products();
        if (screenCells.Length > 0) LastRun = screenCells.Max(cell => cell.Day).ToDateTime(TimeOnly.MinValue).AddDays(1).AddSeconds(-1);
        return new()
        {
            Screens = screenCells,
            Operators = operatorCells,
            Notable = runs,
            Settlements = settlements,
            Controls = controls,
            Kits = writer.Kits(kits.Runs),
            Persons = [.. scan.Sums.ToCells(writer.Sites, writer.Lots)],
            Participation = CubeWriter.Participation(scan.Participation),
            Cases = writer.Cases(scan.Cases),
            Gaps = writer.SiteAndDays(scan.Gaps, static (site, days, count) => new GapCell(site, days, count)),
            IntervalCases = writer.SiteAndDays(scan.IntervalCases, static (site, days, count) => new IntervalCaseCell(site, days, count)),
            Delays = Delays(),
            Audits = audits,
            AuditStrata = audits.IsEmpty ? [] : scan.Audits!.Cells(products),
            AuditProducts = products,
            Conduct = writer.Conduct(Conduct()),
            Repeats = writer.Repeats(scan.Repeats),
            Retests = Retests(),
            Specimens = specimens.ByReason(),
            SettlingSpecimens = scan.SettlingSpecimens,
            Ledger = Ledger(),
        };
    }

    private void Add(RunSink sink, int[] codes)
    {
        var (keys, counts) = sink.Screens.ToArrays();
        for (var i = 0; i < keys.Length; i++)
        {
            screens.Add(((ulong)codes[keys[i] >> Keys.DayBits] << Keys.DayBits) | (keys[i] & ((1 << Keys.DayBits) - 1)), counts[i]);
        }

        operators.AddAll(sink.Operators);
        Checks.AddAll(sink.Checks);
        kitDays.Add(sink.Checks.KitDays);
        conduct.AddAll(sink.Conduct);
        for (var i = 0; i < ledger.Length; i++) ledger[i] += sink.Ledger[i];
        foreach (var row in sink.Notable) notable.Add(row with { Code = codes[row.Code] });
    }

    // Notable rows and results are both in order of record: one walk joins them.
    private (ImmutableArray<NotableRun> Runs, ImmutableArray<ControlCell> Controls, ImmutableArray<SettlementCell> Settlements, List<(ulong Key, FollowUp FollowUp)> Followed) Notable(
        CubeWriter writer, IRowSource source)
    {
        // The changes of one run stand together, in order of the days on which they became known.
        var (changes, nextChange) = (scan.Changes.OrderBy(change => change.Record).ToArray(), 0);
        var settlements = ImmutableArray.CreateBuilder<SettlementCell>(changes.Length);
        var (sites, lots) = (writer.Sites.Texts, writer.Lots.Texts);
        // Of very many kits only those of notable runs are wanted by name.
        var (kitTexts, operatorTexts) = (new Dictionary<int, string>(), vocabularies.Operators.ToArray());
        var results = scan.Results;
        var followed = new List<(ulong, FollowUp)>(results.Count);
        var runs = ImmutableArray.CreateBuilder<NotableRun>(notable.Count);
        var controls = new Dictionary<ControlCell, long>();
        var next = 0;
        foreach (var row in notable)
        {
            for (; next < results.Count && results[next].Record < row.Record; next++) AddNegative(results[next]);
            var shape = shapes[row.Code];
            var time = shape.Time(row.Seconds);
            var (followUp, minutes) = (FollowUp.None, (int?)null);
            if (next < results.Count && results[next].Record == row.Record)
            {
                (followUp, minutes) = (results[next].FollowUp, results[next].Minutes);
                followed.Add((Keys.Operator(row.Operator, shape.Site, results[next].DayNumber, shape.Outcome, shape.Outbreak), followUp));
                next++;
            }

            var local = time.Local;
            runs.Add(new(local.AddSeconds(-local.Second), shape.DateOnly, sites[shape.Site], lots[shape.Lot], KitText(row.Kit),
                operatorTexts[row.Operator], shape.Specimen, shape.Collection, shape.Outcome, followUp, minutes, shape.Control,
                shape.Control is null ? writer.Outbreaks.Of(shape.Outbreak, shape.Site, time.DayNumber) : Occasion.Routine));
            for (; nextChange < changes.Length && changes[nextChange].Record == row.Record; nextChange++)
            {
                var (run, change) = (runs[^1], changes[nextChange]);
                settlements.Add(new(run.Minute, run.DateOnly, run.Site, run.Lot, run.Kit, run.Operator, run.Specimen, run.Collection, run.Outcome,
                    Moment.DayOf(change.Known), change.Before, change.MinutesBefore, change.After, change.MinutesAfter, 1, run.Occasion));
            }

            if (shape.Control is not { } expected) continue;
            var cell = new ControlCell(sites[shape.Site], lots[shape.Lot], KitText(row.Kit), time.Day,
                shape.DateOnly ? null : new TimeOnly(local.Hour, local.Minute), operatorTexts[row.Operator], expected, shape.Outcome, 0);
            controls[cell] = controls.GetValueOrDefault(cell) + 1;
        }

        for (; next < results.Count; next++) AddNegative(results[next]);
        return (runs.DrainToImmutable(), [.. controls.Select(pair => pair.Key with { Runs = pair.Value })], settlements.DrainToImmutable(), followed);

        string KitText(int kit)
        {
            ref var text = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(kitTexts, kit, out var known);
            return known ? text! : text = vocabularies.Kits[kit];
        }

        // An audited negative run is not among the notable ones: its operator is looked up in the export.
        void AddNegative(RunResult result)
        {
            var code = operatorTexts.Length > 1 ? source.Read(result.Record).Operator : 0;
            followed.Add((Keys.Operator(code, shapes[result.Code].Site, result.DayNumber, Outcome.Negative, shapes[result.Code].Outbreak), result.FollowUp));
        }
    }

    private ImmutableArray<DelayCell> Delays()
    {
        var sites = vocabularies.Sites.ToArray();
        var counts = new Dictionary<DelayCell, long>();
        foreach (var result in scan.Results)
        {
            if (result.Minutes is not { } minutes || shapes[result.Code].Outcome == Outcome.Negative) continue;
            Count(new(DelayKind.RunToSpecimen, sites[shapes[result.Code].Site], minutes, result.WholeDays, 0));
        }

        var delays = specimens.Rows.Select(row => SpecimenIndex.Report(row) is { } report
            ? new DelayCell(DelayKind.SpecimenToReport, "", SpecimenIndex.Time(row).MinutesTo(report), SpecimenIndex.Time(row).WholeDaysTo(report), 0)
            : new DelayCell(DelayKind.SpecimenToReport, "", null, false, 0)).ToList();

        // Where no report is recorded at all, the export has none: nothing is known about unresulted specimens.
        if (delays.Exists(delay => delay.Minutes is not null)) delays.ForEach(Count);
        return [.. counts.Select(pair => pair.Key with { Count = pair.Value })];

        void Count(DelayCell cell) => counts[cell] = counts.GetValueOrDefault(cell) + 1;
    }

    private ImmutableArray<AuditCell> Audits()
    {
        var (sites, lots, strata) = (vocabularies.Sites.ToArray(), vocabularies.Lots.ToArray(), vocabularies.Strata.ToArray());
        var counts = new Dictionary<AuditCell, long>();
        foreach (var result in scan.Results)
        {
            var shape = shapes[result.Code];
            if (shape.Outcome != Outcome.Negative) continue;
            var cell = new AuditCell(sites[shape.Site], lots[shape.Lot], Moment.DayOf(result.DayNumber), strata[result.Stratum], result.FollowUp, 0);
            counts[cell] = counts.GetValueOrDefault(cell) + 1;
        }

        return [.. counts.Select(pair => pair.Key with { Runs = pair.Value })];
    }

    private ImmutableArray<RetestCell> Retests()
    {
        var (sites, lots) = (vocabularies.Sites.ToArray(), vocabularies.Lots.ToArray());
        var counts = new Dictionary<RetestCell, long>();
        foreach (var found in scan.Retests)
        {
            var (run, retest) = (shapes[found.Code], shapes[found.RetestCode]);
            var cell = new RetestCell(sites[run.Site], lots[run.Lot], Moment.DayOf(found.DayNumber), lots[retest.Lot], retest.Outcome, found.FollowUp, 0);
            counts[cell] = counts.GetValueOrDefault(cell) + 1;
        }

        return [.. counts.Select(pair => pair.Key with { Pairs = pair.Value })];
    }

    private CountTable Conduct()
    {
        conduct.AddAll(scan.Isolated);
        conduct.AddAll(kits!.Beyond);
        return conduct;
    }

    private ImmutableArray<LedgerCell> Ledger()
    {
        var cells = ImmutableArray.CreateBuilder<LedgerCell>();
        foreach (var entry in Enum.GetValues<LedgerEntry>()) cells.Add(new(ExportKind.Screening, entry, ledger[(int)entry]));
        if (!specimens.HasExport) return cells.ToImmutable();
        cells.Add(new(ExportKind.Confirmatory, LedgerEntry.SetAside, 0));
        cells.Add(new(ExportKind.Confirmatory, LedgerEntry.Duplicate, specimens.Removed.Count));
        cells.Add(new(ExportKind.Confirmatory, LedgerEntry.Counted, specimens.Rows.Length));
        return cells.ToImmutable();
    }
}
