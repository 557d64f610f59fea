using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;
using ScreenStats.Records;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Understanding;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Engines;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>One reading of the views.</summary>
internal sealed class ViewCounting(Engine engine, ProgramSettings settings, Vocabularies vocabularies, TimeScale scale, ReadOptions options, int threads)
{
    private const int PeopleLookedAt = 20_000;

    private readonly WarehouseSettings warehouse = settings.Warehouse!;
    private readonly LocalTimes times = new(settings.TimeZone is { } zone ? TimeZoneInfo.FindSystemTimeZoneById(zone) : null, scale);

    public ViewsRead Run()
    {
        var name = warehouse.Screening;
        // Of a view that is not there no plan can be asked for; what it lacks is said below.
        var columns = engine.Columns(name);
        var sharded = columns.Count > 0 && engine.IsSharded(string.Join('.', name.Split('.').Select(part => $"\"{part}\"")));
        var view = new View(ExportKind.Screening, name, columns, sharded);
        var confirmatory = warehouse.Confirmatory is { } other ? new View(ExportKind.Confirmatory, other, engine.Columns(other), sharded) : null;
        var asking = new Asking(engine, sharded);
        var findings = new ViewFindings(ExportKind.Screening, name);
        var names = new Names(name, vocabularies);
        using var counter = new RunCounter(settings, vocabularies) { Cancelled = options.CancellationToken };

        var rows = new RowNumbers(asking, view, findings);
        var sql = rows.Count();
        var days = Days(asking, sql, view);
        var runs = new FetchedRuns(name);
        var specimens = new FetchedSpecimens(warehouse.Confirmatory ?? "");
        var found = new SpecimenFetch(times, vocabularies, specimens);
        if (confirmatory is not null) engine.Read(new ConfirmatorySql(confirmatory, engine.Dialect).Rows(), found.Take);
        if (found.WrongDates) throw WrongDates(warehouse.Confirmatory!);
        var confirmatoryFindings = new ViewFindings(ExportKind.Confirmatory, warehouse.Confirmatory ?? "");
        foreach (var fault in found.SetAside.GroupBy(row => row.Fault).OrderBy(fault => fault.Key)) confirmatoryFindings.SetAside(fault.Key, fault.Count());
        confirmatoryFindings.UnknownWords(ViewContract.Reason, found.UnknownReasons);
        var inOrder = confirmatory is null ? null : specimens.InOrder();

        var fetch = new RowFetch(names, times, runs);
        var wholes = new PeopleToRead(asking, sql, view, runs, fetch, settings, inOrder, specimens).Read(out var known, out var people);
        runs.Order();
        findings.Identities(ViewContract.Person, people.Concat(Sample(sql)), rows.Addresses);
        confirmatoryFindings.Identities(ViewContract.Person, specimens.People.Select(one => one.Text).Distinct(StringComparer.Ordinal));

        var sink = (RunSink)counter.CreateSink();
        for (var at = 0; at < runs.Count; at++) sink.TakeCounted(runs[at]);
        rows.CountInto(sink);
        if (days.Any(day => day.Counted > 0)) sink.Meet(days.Where(day => day.Counted > 0).Min(day => day.Day), days.Where(day => day.Counted > 0).Max(day => day.Day));
        var tables = new TableCounts(asking, sql, view, names, times, sink);
        tables.Fill(settings, vocabularies, days.Select(day => day.First).FirstOrDefault(first => first is not null) ?? 0);
        findings.Identities(ViewContract.Operator, names.Operators);

        var elsewhere = new PeopleElsewhere(asking, sql, names, vocabularies, settings, times, runs, wholes, days, known);
        foreach (var text in people) elsewhere.Meet(Names.Person(text), text);
        // What looks like people must not stand in any message of the count.
        if (findings.Found.Concat(confirmatoryFindings.Found).Any(one => one.Severity == Severity.Error)) throw new UnusableDataException([.. findings.Found.Concat(confirmatoryFindings.Found).OrderByDescending(one => one.Severity == Severity.Error)]);
        Usable(rows, found);
        counter.Elsewhere = elsewhere;
        var counted = counter.Complete(inOrder, runs, confirmatory is null ? null : specimens, options.AsOf, threads);
        if (asking.NotPushed.Count > 0)
        {
            findings.Say(WarehouseDiagnostics.NotPushed, Severity.Warning, "", asking.NotPushed.Count,
                $"Shards do not group by themselves: {asking.NotPushed[0]}{(asking.NotPushed.Count > 1 ? $", and {asking.NotPushed.Count - 1} more" : "")}. The counts are right, but more moves than needed: partition by bucket, ANALYZE on both sides, and look at EXPLAIN VERBOSE.");
        }

        return new(counted, name, warehouse.Confirmatory ?? "")
        {
            Found = [.. findings.Found, .. confirmatoryFindings.Found],
            SetAside = [.. SetAside(rows.SetAside(sql).Select(row => findings.Row(row.Number, row.Fault)), counted, ExportKind.Screening, runs),
                .. confirmatory is null ? [] : SetAside(found.SetAside.Select(row => confirmatoryFindings.Row(row.Number, row.Fault)), counted, ExportKind.Confirmatory, specimens)],
            Completeness = [.. rows.Completeness(), .. confirmatory is null ? [] : found.Recorded.Select(column =>
                new CompletenessCell(ExportKind.Confirmatory, column.Key, confirmatory.Has(column.Key), found.Lines, column.Value))],
            Ledger = [new(ExportKind.Screening, LedgerEntry.SetAside, rows.Faults), .. confirmatory is null ? [] : ImmutableArray.Create(new LedgerCell(ExportKind.Confirmatory, LedgerEntry.SetAside, found.SetAside.Count))],
        };
    }

    private List<ViewDay> Days(Asking asking, ScreeningSql sql, View view)
    {
        var days = new Dictionary<int, ViewDay>();
        asking.Read(sql.Days(), line =>
        {
            var at = asking.Sharded ? 1 : 0;
            var day = new ViewDay((int)line.Whole(at), line.Whole(at + 1), line.Whole(at + 2), line.Number(at + 3), line.Number(at + 4));
            if (day.First is { } first && (!times.IsOn(day.Day, first) || !times.IsOn(day.Day, day.Last!.Value))) throw WrongDates(view.Name);
            if (days.TryGetValue(day.Day, out var known))
            {
                day = new(day.Day, known.Counted + day.Counted, known.Dates + day.Dates, day.First is null || known.First < day.First ? known.First : day.First, null);
            }

            days[day.Day] = day;
        });
        return [.. days.Values.OrderBy(day => day.Day)];
    }

    private UnusableDataException WrongDates(string view) => new(new Diagnostic(WarehouseDiagnostics.LocalDates, Severity.Error, view, null, ViewContract.CollectedOn,
        settings.TimeZone is { } zone
            ? $"In the view {view} there are dates in collected_on that are not the local dates of collected_at in {zone}, the timeZone of the program file. Correct the view or timeZone."
            : $"In the view {view} there are dates in collected_on that are not those of collected_at. The program file states no timeZone, so times must be local times written as if they were UTC; state timeZone, or correct the view."));

    private List<string> Sample(ScreeningSql sql)
    {
        var people = new List<string>();
        engine.Read(sql.SomePeople(PeopleLookedAt), line => people.Add(line.Text(0)!));
        return people;
    }

    private void Usable(RowNumbers rows, SpecimenFetch found)
    {
        if (rows.Rows == 0)
            throw new UnusableDataException(new Diagnostic(ReadingDiagnostics.NoRows, Severity.Error, warehouse.Screening, null, "", $"The view {warehouse.Screening} has no rows. Check that it is the right one."));
        foreach (var (name, all, aside) in new[] { (warehouse.Screening, rows.Rows, rows.Faults), (warehouse.Confirmatory ?? "", found.Lines, found.SetAside.Count) })
        {
            if (all == 0 || aside < all) continue;
            throw new UnusableDataException(new Diagnostic(ReadingDiagnostics.NothingUsable, Severity.Error, name, null, "",
                $"All {ViewFindings.Figure(all)} rows of the view {name} were set aside, so nothing can be evaluated. Compare its columns with the contract of the views."));
        }
    }

    private static IEnumerable<SetAsideRow> SetAside(IEnumerable<SetAsideRow> aside, CountedExports counted, ExportKind export, IRowSource source)
    {
        var removed = counted.Removed.Where(row => row.Export == export).Select(row =>
        {
            var (place, first) = (source.Place(row.Record), source.Place(row.First));
            var where = first.Line > 0 ? $"row {ViewFindings.Figure(first.Line)}" : "another row";
            return new SetAsideRow(place.File, place.Line, row.Code, row.Code == CountingDiagnostics.Duplicate ? $"the same values as {where}" : $"the screen_id of {where} with other values", first.Line > 0 ? first.Line : null, null);
        });
        return aside.Concat(removed).OrderBy(row => row.Line);
    }
}
