using System.Globalization;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Validation;

/// <summary>Findings as diagnostics and as reasons of set-aside rows.</summary>
internal static class FindingTexts
{
    public static string Code(Finding finding) => finding switch
    {
        Finding.MalformedRow => ReadingDiagnostics.MalformedRow,
        Finding.TooManyFields => ReadingDiagnostics.TooManyFields,
        Finding.BlankRow => ReadingDiagnostics.BlankRow,
        Finding.MissingValue => ReadingDiagnostics.MissingValue,
        Finding.UnreadableDate => ReadingDiagnostics.UnreadableDate,
        Finding.UnknownResult => ReadingDiagnostics.UnknownResult,
        Finding.UnreadableNumber => ReadingDiagnostics.UnreadableNumber,
        Finding.UnreadableValue => ReadingDiagnostics.UnreadableValue,
        Finding.ResultAgainstLines => ReadingDiagnostics.ResultAgainstLines,
        Finding.TotalsLine => ReadingDiagnostics.TotalsLine,
        Finding.TwoDigitYear => ReadingDiagnostics.TwoDigitYear,
        Finding.MalformedLine => ReadingDiagnostics.MalformedLine,
        Finding.NotAnObservation => ReadingDiagnostics.NotAnObservation,
        Finding.ResultNotFinal => ReadingDiagnostics.ResultNotFinal,
        Finding.ModifiedObservation => ReadingDiagnostics.ModifiedObservation,
        Finding.ContradictoryObservation => ReadingDiagnostics.ContradictoryObservation,
        Finding.NameTooLong => ReadingDiagnostics.NameTooLong,
        Finding.RepeatedSite => SurroundingsDiagnostics.RepeatedSite,
        Finding.TwoRegions => SurroundingsDiagnostics.TwoRegions,
        _ => ReadingDiagnostics.NamesPeople,
    };

    /// <summary>Why a row was set aside.</summary>
    public static string Reason(Finding finding, string column) => finding switch
    {
        Finding.MalformedRow => "text follows a closing quote",
        Finding.TooManyFields => "more fields than headings",
        Finding.BlankRow => "every field is blank",
        Finding.MissingValue => $"{column} is blank",
        Finding.UnreadableDate => $"{column} is not a date that can be read",
        Finding.UnknownResult => $"{column} is not a known word",
        Finding.TotalsLine => "a line of totals",
        Finding.TwoDigitYear => $"{column} has a year of two figures",
        Finding.MalformedLine => "the line is no JSON object",
        Finding.NotAnObservation => "the resource is no Observation",
        Finding.ResultNotFinal => "status says that the result is not final, or was withdrawn",
        Finding.ModifiedObservation => "the resource has a modifierExtension or implicitRules, which may change what it means",
        Finding.ContradictoryObservation => "value and interpretation say different things",
        Finding.NameTooLong => $"{column} is longer than 200 bytes",
        Finding.RepeatedSite => "an earlier row is about the same site",
        Finding.TwoRegions => "an earlier row gives the site another region",
        _ => $"{column} is not a whole number",
    };

    public static Diagnostic Diagnostic(Finding finding, ExportKind export, string column, string file, long line, long count, DateOrder? stated = null)
    {
        var name = export.ToString().ToLowerInvariant();
        var rows = count == 1
            ? $"1 row of the {name} export ({Place(file, line)} of {file})"
            : $"{Figure(count)} rows of the {name} export (the first {On(file, line)} of {file})";
        var one = count == 1;
        var aside = one ? "It was set aside" : "They were set aside";
        var has = one ? "has" : "have";
        var message = finding switch
        {
            Finding.MalformedRow => $"{rows} {has} text behind a closing quote. {aside}; correct the quotes.",
            Finding.TooManyFields => $"{rows} {has} more fields than there are headings, so values may stand in the wrong columns. {aside}; put quotes around text that holds the delimiter.",
            Finding.BlankRow => $"{rows} {has} no value in any field. {aside}; remove such rows from the export.",
            Finding.MissingValue => $"{rows} {has} no {column}. {aside}; fill it in the source.",
            Finding.UnreadableDate => $"{rows} {has} a {column} that is not a date that can be read, or does not exist. {aside}; {Order(stated, name, "write dates as in 2026-01-05T08:30")}",
            Finding.UnknownResult => $"{rows} {has} a {column} that is not a known word. {aside}; say what the word means in the program file (exports.{name}.words).",
            Finding.UnreadableNumber => $"{rows} {has} a {column} that is not a whole number. {aside}; write figures only.",
            Finding.UnreadableValue when IsDate(column) => $"{rows} {has} a {column} that is not a date that can be read; it counts as not recorded. {(stated is null ? "Write dates as in 2026-01-05T08:30" : "W" + Order(stated, name, "write dates as in 2026-01-05T08:30")[1..^1])}; for years of two figures state \"twoDigitYears\": true in the program file (exports.{name}).",
            Finding.UnreadableValue => $"{rows} {has} a {column} that cannot be read; it counts as not recorded. Correct it, or say what the word means in the program file (exports.{name}.words).",
            Finding.NameTooLong => $"{rows} {has} a {column} of more than {RowReader.LongestName} bytes, as no name has. {(column == CanonicalColumns.Site ? aside : "It counts as not recorded")}; look for a missing quote, or text in the wrong column.",
            Finding.ResultAgainstLines => $"{rows} {has} a result that says otherwise than control_line and test_line. The result was taken; correct the source.",
            Finding.RepeatedSite => $"{rows} {(one ? "is about a site" : "are about sites")} that came before, and {(one ? "says" : "say")} nothing else of it. The site counts once; remove {(one ? "the row" : "such rows")} from the export.",
            Finding.TwoRegions => $"{rows} {(one ? "gives a site another region" : "give sites other regions")} than a row before, so it cannot be said where its runs belong. Keep one row for each site.",
            Finding.LooksLikeName => Identity(rows, has, column, "a name"),
            Finding.LooksLikeEmailAddress => Identity(rows, has, column, "an e-mail address"),
            Finding.LooksLikeTelephoneNumber => Identity(rows, has, column, "a telephone number"),
            Finding.LooksLikeGovernmentNumber => Identity(rows, has, column, "a social security or national insurance number"),
            Finding.TotalsLine => $"{rows} {(one ? "is a line of totals" : "are lines of totals")}, not {(one ? "a run or person" : "runs or people")}. {aside}; nothing needs to be done.",
            Finding.TwoDigitYear => $"{rows} {has} a {column} whose year has two figures. {aside}; write years with four figures, or state \"twoDigitYears\": true in the program file (exports.{name}), which reads them as 2000 to 2099.",
            Finding.MalformedLine => $"{rows} {(one ? "is" : "are")} not one JSON object in UTF-8 with each of its keys once. {aside}; correct the export.",
            Finding.NotAnObservation => $"{rows} {has} a resource of another type than Observation. {aside}; leave such resources out of the export.",
            Finding.ResultNotFinal => $"{rows} {has} a status other than final, amended or corrected: the result is not final yet, or was withdrawn. {aside}; export {(one ? "it" : "them")} again once final.",
            Finding.ModifiedObservation => $"{rows} {has} a modifierExtension or implicitRules, which may change what everything else means. {aside}; ask the laboratory for the plain result.",
            Finding.ContradictoryObservation => $"{rows} {has} a value and an interpretation that say different things. {aside}; ask the laboratory which one holds.",
            _ => throw new ArgumentOutOfRangeException(nameof(finding)),
        };
        var severity = finding is Finding.LooksLikeName or Finding.LooksLikeEmailAddress or Finding.LooksLikeTelephoneNumber or Finding.LooksLikeGovernmentNumber or Finding.TwoRegions ? Severity.Error
            : finding == Finding.TotalsLine ? Severity.Note : Severity.Warning;
        return new Diagnostic(Code(finding), severity, file, line, column, message, count);
    }

    /// <summary>What to do about dates: an order that was stated, perhaps pinned for an earlier export, may be what keeps them from being read.</summary>
    private static string Order(DateOrder? stated, string export, string write) => stated is not { } order
        ? $"{write}, or state dateOrder in the program file (exports.{export})."
        : $"{write}, or, as the program file states dateOrder \"{(order switch { DateOrder.Iso => "iso", DateOrder.DayFirst => "day-first", _ => "month-first" })}\" (exports.{export}) and this export may be written otherwise, correct or remove it there.";

    private static bool IsDate(string column) => column is CanonicalColumns.ReadAt or CanonicalColumns.LotExpiry or CanonicalColumns.ReportedAt;

    /// <summary>The place of a row in its file: a line, or where there are none a record.</summary>
    public static string Place(string file, long line) => $"{(HasRecords(file) ? "record" : "line")} {Figure(line)}";

    /// <summary>The same behind a verb.</summary>
    public static string On(string file, long line) => $"{(HasRecords(file) ? "in" : "on")} {Place(file, line)}";

    private static bool HasRecords(string file) => Formats.FileForm.Of(file).Format == Formats.FileFormat.Parquet;

    public static string Figure(long value) => value.ToString("N0", CultureInfo.InvariantCulture);

    /// <summary>What is to be done about a column that names people.</summary>
    public static string Remedy(string column) =>
        "Nothing was evaluated: results about health must not stand beside names. "
        + $"Replace {column} by keyed pseudonyms before the exports leave their owner (screenstats pseudonymize), with the same key in every export, so that they still link.";

    private static string Identity(string rows, string has, string column, string kind) =>
        $"In the column {column}, {rows} {has} what looks like {kind}. {Remedy(column)}";
}
