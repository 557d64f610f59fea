using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>The diagnostics of counting.</summary>
internal static class CountingFindings
{
    public static void Add(
        FoundDiagnostics found, SpecimenIndex specimens, List<RemovedRow> removed, PartitionScan scan, IRowSource screeningRows, IRowSource? confirmatoryRows, TallyCells cells)
    {
        AddRemoved(found, removed, screeningRows);
        AddPossible(found, scan.PossibleDuplicates, screeningRows,
            "neither a screen_id nor a time of day; such rows are counted. Export one of the two, so that copies can be told from second runs.");
        if (confirmatoryRows is null) return;
        AddRemoved(found, specimens.Removed, confirmatoryRows);
        AddPossible(found, specimens.PossibleDuplicates, confirmatoryRows,
            "no time of day; such rows are counted. Export times of day, so that copies can be told from second specimens.");
        var early = new List<uint>();
        var audits = new List<uint>();
        foreach (ref readonly var row in specimens.Rows.AsSpan())
        {
            if (row.Reported is not null && SpecimenIndex.Report(row) is null) early.Add(row.Record);
            if (row.Reason == SpecimenReason.Audit) audits.Add(row.Record);
        }

        found.Add(CountingDiagnostics.ReportBeforeCollection, "reported_at", confirmatoryRows, early, early.Count,
            $"{early.Count:N0} {(early.Count == 1 ? "specimen was" : "specimens were")} reported before collection; the time of report is taken as not recorded. Correct collected_at or reported_at.");
        var without = audits.Count - scan.AuditsWithRun;
        if (without > 0)
        {
            found.All.Add(new(CountingDiagnostics.AuditWithoutRun, Severity.Note, confirmatoryRows.Place(audits.Min()).File, null, "reason", string.Create(
                CultureInfo.InvariantCulture,
                $"{without:N0} of {audits.Count:N0} audit specimens {(without == 1 ? "finds" : "find")} no negative run of the person in the audit window and {(without == 1 ? "verifies" : "verify")} nothing. Check the pseudonyms and times of both exports, and auditWithinHours."),
                without));
        }

        AuditDiagnostics.Add(found.All, cells, scan.Audits, confirmatoryRows.Place(audits.Count == 0 ? 0 : audits.Min()).File);
    }

    private static void AddRemoved(FoundDiagnostics found, List<RemovedRow> removed, IRowSource source)
    {
        foreach (var code in (ReadOnlySpan<string>)[CountingDiagnostics.Duplicate, CountingDiagnostics.ConflictingScreenId])
        {
            var rows = removed.Where(row => row.Code == code).Select(row => row.Record).ToList();
            var one = rows.Count == 1;
            var message = code == CountingDiagnostics.Duplicate
                ? $"{(one ? "row has" : "rows have")} the same values in every mapped column as an earlier row and {(one ? "is" : "are")} left out. set-aside.csv names both lines."
                : $"{(one ? "row has" : "rows have")} the screen_id of an earlier row but other values and {(one ? "is" : "are")} set aside. set-aside.csv names both lines; correct the export.";
            found.Add(code, code == CountingDiagnostics.Duplicate ? "" : "screen_id", source, rows, rows.Count, $"{rows.Count:N0} {message}");
        }
    }

    private static void AddPossible(FoundDiagnostics found, List<uint> records, IRowSource source, string because) =>
        found.Add(CountingDiagnostics.PossibleDuplicate, "", source, records, records.Count,
            $"{records.Count:N0} {(records.Count == 1 ? "row has" : "rows have")} the same values as an earlier row, but {because}");
}
