using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Understanding;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>How many rows the screening view has, what becomes of them, and how much of each column is recorded.</summary>
internal sealed class RowNumbers(Asking asking, View view, ViewFindings findings)
{
    private readonly long[] entries = new long[Enum.GetValues<LedgerEntry>().Length];
    private readonly Dictionary<string, long> recorded = new(StringComparer.Ordinal);

    /// <summary>All rows.</summary>
    public long Rows { get; private set; }

    /// <summary>Rows that are set aside.</summary>
    public long Faults { get; private set; }

    /// <summary>Rows whose pseudonym holds an at sign.</summary>
    public long Addresses { get; private set; }

    /// <summary>Counted rows that were read before they were collected.</summary>
    public long ReadBefore { get; private set; }

    /// <summary>Counts, and gives the queries that need not look for what there is none of.</summary>
    public ScreeningSql Count()
    {
        var sql = new ScreeningSql(view, asking.Dialect, asking.Sharded);
        var faults = new SortedDictionary<RowFault, long>();
        asking.Read(sql.Entries(), 1, (line, at, rows) =>
        {
            var entry = (int)line.Whole(at);
            Rows += rows;
            if (entry >= ScreeningSql.Entry(0)) entries[entry - ScreeningSql.Entry(0)] += rows;
            else faults[(RowFault)entry] = faults.GetValueOrDefault((RowFault)entry) + rows;
        });
        Faults = faults.Values.Sum();
        foreach (var (fault, rows) in faults) findings.SetAside(fault, rows);
        Recorded(sql);
        return new ScreeningSql(view, asking.Dialect, asking.Sharded, new RowsMet(
            Faults > 0, entries[(int)LedgerEntry.ControlRun] > 0, entries[(int)LedgerEntry.KeptOutSymptomatic] > 0, entries[(int)LedgerEntry.KeptOutExposed] > 0));
    }

    /// <summary>Rows that are set aside, each with its number and why.</summary>
    public List<(long? Number, RowFault Fault)> SetAside(ScreeningSql sql)
    {
        var rows = new List<(long?, RowFault)>();
        if (Faults > 0) asking.Read(sql.SetAside(), line => rows.Add((line.Number(0), (RowFault)line.Whole(1))));
        return rows;
    }

    /// <summary>Puts the ledger, and what needs no key, into a sink.</summary>
    public void CountInto(RunSink sink)
    {
        for (var entry = 0; entry < entries.Length; entry++) sink.Ledger[entry] += entries[entry];
        sink.Checks.ReadBeforeCollected.AddUnseen(ReadBefore);
    }

    public IEnumerable<CompletenessCell> Completeness() => CanonicalColumns.Of(ExportKind.Screening).Select(column =>
        new CompletenessCell(ExportKind.Screening, column.Name, view.Has(column.Name), Rows, recorded.GetValueOrDefault(column.Name)));

    private void Recorded(ScreeningSql sql)
    {
        var asked = new List<(string Condition, Action<long> Take)>();
        foreach (var column in ViewContract.Screening.Where(column => view.Has(column.Name) && column.Name is not (ViewContract.Bucket or ViewContract.RowNumber or ViewContract.CollectedOn)))
        {
            var condition = column.Name == ViewContract.CollectedAt ? $"collected_on >= {ScreeningSql.FirstDate} AND collected_on <= {ScreeningSql.LastDate}"
                : column.Name == ViewContract.Site ? $"site <> '' AND {asking.Dialect.Bytes("site")} <= 200"
                : !column.Words.IsEmpty ? $"{column.Name} IN ({ScreeningSql.List(column.Words)})"
                : column.Type == ViewType.Text ? $"{column.Name} <> ''" : $"{column.Name} IS NOT NULL";
            asked.Add((condition, rows => recorded[column.Name] = recorded.GetValueOrDefault(column.Name) + rows));
            if (column.Words.IsEmpty || column.Required) continue;
            var unknown = 0L;
            asked.Add(($"{column.Name} <> '' AND {column.Name} NOT IN ({ScreeningSql.List(column.Words)})", rows => unknownWords[column.Name] = unknown += rows));
        }

        asked.Add(("person LIKE '%@%'", rows => Addresses += rows));
        if (asking.Sharded) asked.Add(("bucket IS NULL", rows => withoutBucket += rows));
        if (view.Has(ViewContract.ReadAt)) asked.Add(($"{sql.Counted} AND {asking.Dialect.IsLess(ViewContract.CollectedAt, ViewContract.ReadAt, 0)}", rows => ReadBefore += rows));
        var first = asking.Sharded ? 1 : 0;
        asking.Read(sql.Totals(asked.Select(one => one.Condition)), line =>
        {
            for (var at = 0; at < asked.Count; at++) asked[at].Take(line.Whole(first + at));
        });
        foreach (var (column, rows) in unknownWords) findings.UnknownWords(column, rows);
        if (asking.Sharded) Buckets(sql);
    }

    private void Buckets(ScreeningSql sql)
    {
        if (withoutBucket > 0) Wrong(withoutBucket, $"is NULL in {ViewFindings.Figure(withoutBucket)} rows");
        var several = 0L;
        asking.Read(sql.PeopleInSeveralBuckets(), line => several += line.Whole(0));
        if (several > 0) Wrong(several, $"puts {ViewFindings.Figure(several)} people into more than one bucket, so that their runs lie on several shards");

        void Wrong(long times, string how) =>
            findings.Say(WarehouseDiagnostics.WrongBuckets, Severity.Error, ViewContract.Bucket, times, $"The column bucket of the view {view.Name} {how}. Derive it from the person alone.");
    }

    private readonly SortedDictionary<string, long> unknownWords = new(StringComparer.Ordinal);
    private long withoutBucket;
}
