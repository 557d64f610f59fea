using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>The codes of what reading finds in the exports.</summary>
public static class ReadingDiagnostics
{
    /// <summary>The program's folder does not exist.</summary>
    public const string MissingFolder = "missing-folder";

    /// <summary>A required export has no file.</summary>
    public const string MissingFile = "missing-file";

    /// <summary>A file cannot be opened.</summary>
    public const string UnreadableFile = "unreadable-file";

    /// <summary>A file is empty.</summary>
    public const string EmptyFile = "empty-file";

    /// <summary>A file is not text.</summary>
    public const string NotText = "not-text";

    /// <summary>A file has headings but no rows.</summary>
    public const string NoRows = "no-rows";

    /// <summary>A file was read as Windows-1252.</summary>
    public const string ReadAsWindows1252 = "read-as-windows-1252";

    /// <summary>A quote is never closed, or is closed on a later line in the middle of text.</summary>
    public const string UnclosedQuote = "unclosed-quote";

    /// <summary>A record is longer than 1 MiB.</summary>
    public const string RecordTooLong = "record-too-long";

    /// <summary>Two headings of a file are the same.</summary>
    public const string RepeatedHeading = "repeated-heading";

    /// <summary>Two headings could be the same column.</summary>
    public const string AmbiguousHeadings = "ambiguous-headings";

    /// <summary>The program file maps a heading that the file does not have.</summary>
    public const string MappedHeadingMissing = "mapped-heading-missing";

    /// <summary>The program file maps a column that the export does not have.</summary>
    public const string UnknownColumn = "unknown-column";

    /// <summary>The program file gives a word a meaning that no column has.</summary>
    public const string UnknownMeaning = "unknown-meaning";

    /// <summary>A required column has no heading.</summary>
    public const string MissingColumn = "missing-column";

    /// <summary>The order of day and month cannot be told.</summary>
    public const string AmbiguousDates = "ambiguous-dates";

    /// <summary>Dates of one column are written in both orders.</summary>
    public const string ContradictoryDates = "contradictory-dates";

    /// <summary>Times with and without an offset, and no time zone.</summary>
    public const string MixedOffsets = "mixed-offsets";

    /// <summary>The time zone of the program file is not known.</summary>
    public const string UnknownTimeZone = "unknown-time-zone";

    /// <summary>A person or operator column names people.</summary>
    public const string NamesPeople = "names-people";

    /// <summary>A row in which text follows a closing quote.</summary>
    public const string MalformedRow = "malformed-row";

    /// <summary>A row with more fields than headings.</summary>
    public const string TooManyFields = "too-many-fields";

    /// <summary>A row whose fields are all blank.</summary>
    public const string BlankRow = "blank-row";

    /// <summary>A required field is blank.</summary>
    public const string MissingValue = "missing-value";

    /// <summary>A required date cannot be read.</summary>
    public const string UnreadableDate = "unreadable-date";

    /// <summary>A required result is no known word.</summary>
    public const string UnknownResult = "unknown-result";

    /// <summary>A required number cannot be read.</summary>
    public const string UnreadableNumber = "unreadable-number";

    /// <summary>A value that is not required cannot be read and counts as not recorded.</summary>
    public const string UnreadableValue = "unreadable-value";

    /// <summary>The result word and the lines say different things.</summary>
    public const string ResultAgainstLines = "result-against-lines";

    /// <summary>Every row was set aside.</summary>
    public const string NothingUsable = "nothing-usable";

    /// <summary>Every code with its severity, meaning and advice.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        new(MissingFolder, Severity.Error, "The folder does not exist.", "Check the path."),
        new(MissingFile, Severity.Error, "An export has no file in the folder.", "Put it there, or name it in the program file under exports."),
        new(UnreadableFile, Severity.Error, "A file cannot be opened.", "Check that it exists, that you may read it and that no other program holds it."),
        new(EmptyFile, Severity.Error, "A file is empty.", "Export it again."),
        new(NotText, Severity.Error, "A file is not text.", "Export it as CSV."),
        new(NoRows, Severity.Error, "A file has headings but no rows.", "Export it again, with its rows."),
        new(ReadAsWindows1252, Severity.Note, "A file is not valid UTF-8 and was read as Windows-1252.", "Export it as UTF-8 if letters look wrong."),
        new(UnclosedQuote, Severity.Error, "A quote is never closed, or closes on a later line in the middle of text, so rows cannot be told apart.",
            "Close or remove the quote on the line named."),
        new(RecordTooLong, Severity.Error, "A record is longer than 1 MiB.", "Check line ends and quotes at the line named."),
        new(RepeatedHeading, Severity.Error, "Two headings of a file are the same.", "Rename or remove one of them."),
        new(AmbiguousHeadings, Severity.Error, "Two headings could be the same column.", "Say which in the program file under exports, columns."),
        new(MappedHeadingMissing, Severity.Error, "The program file maps a heading that the file does not have.", "Correct exports, columns in the program file."),
        new(UnknownColumn, Severity.Error, "The program file maps a column that the export does not have.", "Use a column name of the export."),
        new(UnknownMeaning, Severity.Error, "The program file gives a word a meaning that no column of the export has.", "Use one of the meanings that the message lists."),
        new(MissingColumn, Severity.Error, "A required column has no heading.", "Add the column, or map its heading in the program file."),
        new(AmbiguousDates, Severity.Error, "Dates could be day-first or month-first, and nothing in the column decides it.",
            "State dateOrder for the export in the program file."),
        new(ContradictoryDates, Severity.Error, "Some dates of a column can only be day-first, others only month-first.",
            "Export the column in one form, ISO 8601 at best."),
        new(MixedOffsets, Severity.Error, "Some times have an offset, others have none, and the program file states no time zone.",
            "State timeZone in the program file."),
        new(UnknownTimeZone, Severity.Error, "The time zone of the program file is not known.", "Write an IANA name, such as Europe/Vienna."),
        new(NamesPeople, Severity.Error, "A person or operator column holds what looks like names, e-mail addresses or telephone numbers.",
            "Replace them by keyed pseudonyms before the export leaves its owner."),
        new(MalformedRow, Severity.Warning, "Text follows a closing quote, so the row's fields are in doubt; it was set aside.", "Correct the quotes on the line named."),
        new(TooManyFields, Severity.Warning, "A row has more fields than headings, so its values may stand in the wrong columns; it was set aside.",
            "Put quotes around text that holds the delimiter."),
        new(BlankRow, Severity.Warning, "A row has delimiters but no value; it was set aside.", "Remove it."),
        new(MissingValue, Severity.Warning, "A required field is blank; the row was set aside.", "Fill it in the source."),
        new(UnreadableDate, Severity.Warning, "A required date cannot be read or does not exist; the row was set aside.", "Write it as in ISO 8601, or state dateOrder."),
        new(UnknownResult, Severity.Warning, "A result is no known word; the row was set aside.", "Say what it means in the program file under exports, words."),
        new(UnreadableNumber, Severity.Warning, "A required number cannot be read; the row was set aside.", "Write a whole number."),
        new(UnreadableValue, Severity.Warning, "A value that is not required cannot be read and counts as not recorded.", "Correct it, or say what it means under exports, words."),
        new(ResultAgainstLines, Severity.Warning, "The result word and the lines seen say different things; the word was taken.", "Correct one of them in the source."),
        new(NothingUsable, Severity.Error, "Every row of a required export was set aside.", "Look at the other diagnostics: often one column is not understood."),
    ];
}
