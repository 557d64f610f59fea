using System.Collections.Immutable;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>Every diagnostic code there is. Codes are stable: a program may filter on them.</summary>
public static class DiagnosticCatalogue
{
    /// <summary>All codes with their meaning, in the order in which they are declared.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        .. ProgramFileCodes(),
        .. ReadingDiagnostics.All,
        .. PrivacyDiagnostics.All,
        .. CountingCodes(),
        .. ConductDiagnostics.All,
        .. SurroundingsDiagnostics.All,
        .. WarehouseDiagnostics.All,
    ];

    private static IEnumerable<DiagnosticDescription> ProgramFileCodes() =>
    [
        new(ProgramFile.NotFoundCode, Severity.Error, "There is no folder and no program file of the name given.", "Check the path."),
        new(ProgramFile.UnreadableCode, Severity.Error, "The program file cannot be opened, is too large, or is not UTF-8 text.",
            "Check that it is readable, and save it as UTF-8."),
        new(ProgramFile.NotJsonCode, Severity.Error, "The program file is not valid JSON.",
            "Look for a missing comma, quote or bracket at the line named."),
        new(ProgramFile.UnknownKeyCode, Severity.Error, "The program file holds a key that is not known where it stands.",
            "Write the nearest known key, which the message names, or remove it."),
        new(ProgramFile.RepeatedKeyCode, Severity.Error, "A key of the program file is given twice.", "Keep one of the two."),
        new(ProgramFile.WrongValueCode, Severity.Error, "A value in the program file has the wrong type or is impossible.",
            "Write it as the message says."),
        // Found where synthetic programs are made; the code stands there and a test holds that both are the same.
        new("plan-unusable", Severity.Error, "The plan of a synthetic program cannot be read or carried out.",
            "Correct what the message names."),
    ];

    private static IEnumerable<DiagnosticDescription> CountingCodes() =>
    [
        new("duplicate", Severity.Warning,
            "The row has the same values, as understood, in every mapped column as an earlier row.",
            "Nothing, if the export repeats rows; otherwise find out why the same run was exported twice."),
        new("conflicting-screen-id", Severity.Warning,
            "The row has the screen_id of an earlier row but other values, so one of the two is wrong; the earlier one was kept.",
            "Correct the identifiers, or the values, in the export."),
        new("possible-duplicate", Severity.Note,
            "The row has the same values as an earlier one, but neither a screen_id nor a time of day that could tell a copy from a second run; it was counted.",
            "Export a screen_id or times of day, so that copies can be told from second runs."),
        new("audit-without-run", Severity.Note,
            "No negative run of the person lies within the audit window of this audit specimen, so it verifies nothing.",
            "Check the pseudonyms and times of both exports, and auditWithinHours in the program file."),
        new("audit-strata-overlap", Severity.Error,
            "Negative runs belong to two sampling strata of the program file at once, so neither can be weighted.",
            "Change the patterns under audits, strata in the program file so that each run fits one stratum."),
        new("audit-strata-unexplained", Severity.Warning,
            "Audits name sampling strata of which nothing says how many negative runs they hold, so sensitivity and specificity are shown without weights and are biased if strata were sampled at different rates.",
            "Describe every stratum of the export under audits, strata in the program file."),
        new("audit-strata-by-name", Severity.Note,
            "The sampling strata have the names of sites, or of lots, and are taken as those.",
            "Nothing, if they are; otherwise describe them under audits, strata in the program file."),
        new("negatives-outside-strata", Severity.Note,
            "Some negative runs belong to no sampling stratum, so sensitivity and specificity do not speak of them.",
            "Check the patterns or numbers under audits, strata in the program file, if these runs could have been drawn."),
        new("audit-outside-stratum", Severity.Warning,
            "Audited runs do not belong to the sampling stratum that their specimen names; they count where the specimen says.",
            "Correct sampling_stratum in the confirmatory export, or the strata in the program file."),
        new("audit-stratum-too-small", Severity.Warning,
            "More runs of a sampling stratum were audited than it holds, so its number of negative runs is wrong, and sensitivity and specificity are shown without weights.",
            "Correct the number or the patterns under audits, strata in the program file."),
        new("report-before-collection", Severity.Warning,
            "The report of this specimen is earlier than its collection; the time of the report was taken as not recorded.",
            "Correct collected_at or reported_at in the confirmatory export."),
        new("too-many-levels", Severity.Error,
            "A column that is counted by holds millions of different values, as an identifier does.",
            "Map the column that holds the site, lot, kit or operator; leave identifiers of single runs to screen_id."),
    ];
}
