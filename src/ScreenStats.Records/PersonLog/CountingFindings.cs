using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.PersonLog;

/// <summary>The diagnostics of counting.</summary>
internal static class CountingFindings
{
    public static ImmutableArray<Diagnostic> Of(
        SpecimenIndex specimens, List<RemovedRow> removed, PartitionScan scan, IRowSource screeningRows, IRowSource? confirmatoryRows)
    {
        var found = ImmutableArray.CreateBuilder<Diagnostic>();
        AddRemoved(found, removed, screeningRows);
        AddPossible(found, scan.PossibleDuplicates, screeningRows,
            "neither a screen_id nor a time of day; they are counted. Export one of the two, so that copies can be told from second runs.");
        if (confirmatoryRows is null) return found.ToImmutable();
        AddRemoved(found, specimens.Removed, confirmatoryRows);
        AddPossible(found, specimens.PossibleDuplicates, confirmatoryRows,
            "no time of day; they are counted. Export times of day, so that copies can be told from second specimens.");
        var early = new List<uint>();
        var audits = new List<uint>();
        foreach (ref readonly var row in specimens.Rows.AsSpan())
        {
            if (row.Reported is not null && SpecimenIndex.Report(row) is null) early.Add(row.Record);
            if (row.Reason == SpecimenReason.Audit) audits.Add(row.Record);
        }

        if (early.Count > 0)
        {
            Add(found, CountingDiagnostics.ReportBeforeCollection, Severity.Warning, confirmatoryRows.Place(early.Min()), "reported_at", early.Count, string.Create(
                CultureInfo.InvariantCulture,
                $"{early.Count} specimens were reported before they were collected; their time of report is taken as not recorded. Correct collected_at or reported_at."));
        }

        var without = audits.Count - scan.AuditsWithRun;
        if (without > 0)
        {
            found.Add(new(CountingDiagnostics.AuditWithoutRun, Severity.Note, confirmatoryRows.Place(audits.Min()).File, null, "reason", string.Create(
                CultureInfo.InvariantCulture,
                $"{without} of {audits.Count} audit specimens find no negative run of their person in the audit window and verify nothing. Check the pseudonyms and times of both exports, and auditWithinHours."),
                without));
        }

        return found.ToImmutable();
    }

    private static void AddRemoved(ImmutableArray<Diagnostic>.Builder found, List<RemovedRow> removed, IRowSource source)
    {
        foreach (var code in (ReadOnlySpan<string>)[CountingDiagnostics.Duplicate, CountingDiagnostics.ConflictingScreenId])
        {
            var rows = removed.Where(row => row.Code == code).ToList();
            if (rows.Count == 0) continue;
            var message = code == CountingDiagnostics.Duplicate
                ? $"rows have the same values in every mapped column as an earlier row and are left out. set-aside.csv names both lines."
                : $"rows have the screen_id of an earlier row but other values and are set aside. set-aside.csv names both lines; correct the export.";
            Add(found, code, Severity.Warning, source.Place(rows[0].Record), code == CountingDiagnostics.Duplicate ? "" : "screen_id", rows.Count,
                string.Create(CultureInfo.InvariantCulture, $"{rows.Count} {message}"));
        }
    }

    private static void AddPossible(ImmutableArray<Diagnostic>.Builder found, List<uint> records, IRowSource source, string because)
    {
        if (records.Count == 0) return;
        Add(found, CountingDiagnostics.PossibleDuplicate, Severity.Note, source.Place(records.Min()), "", records.Count,
            string.Create(CultureInfo.InvariantCulture, $"{records.Count} rows have the same values as an earlier row, but {because}"));
    }

    private static void Add(
        ImmutableArray<Diagnostic>.Builder found, string code, Severity severity, RowPlace place, string column, long count, string message) =>
        found.Add(new(code, severity, place.File, place.Line, column, message, count));
}
