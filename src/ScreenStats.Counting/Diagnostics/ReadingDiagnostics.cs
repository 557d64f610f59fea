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

    /// <summary>A file is another at the end of reading than at its beginning.</summary>
    public const string ChangedWhileRead = "changed-while-read";

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

    /// <summary>A file has more columns than are read.</summary>
    public const string TooManyColumns = "too-many-columns";

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

    /// <summary>The name of a site, region, lot, kit, operator or sampling stratum is too long to be one.</summary>
    public const string NameTooLong = "name-too-long";

    /// <summary>A value that is not required cannot be read and counts as not recorded.</summary>
    public const string UnreadableValue = "unreadable-value";

    /// <summary>The result word and the lines say different things.</summary>
    public const string ResultAgainstLines = "result-against-lines";

    /// <summary>Every row was set aside.</summary>
    public const string NothingUsable = "nothing-usable";

    /// <summary>Lines stand before the headings of a file.</summary>
    public const string LinesBeforeHeadings = "lines-before-headings";

    /// <summary>A file lies outside of the program's folder.</summary>
    public const string FileOutsideFolder = "file-outside-folder";

    /// <summary>A course of an infection by day cannot be used.</summary>
    public const string CourseUnusable = "course-unusable";

    /// <summary>A file is called like an export but its ending is not known.</summary>
    public const string FileNotRead = "file-not-read";

    /// <summary>One export was found in two formats.</summary>
    public const string TwoFormats = "two-formats";

    /// <summary>A compressed file is cut off or damaged.</summary>
    public const string DamagedArchive = "damaged-archive";

    /// <summary>A file unpacks to far more than an export.</summary>
    public const string SuspiciousArchive = "suspicious-archive";

    /// <summary>There is no room to unpack a file.</summary>
    public const string NoRoomToUnpack = "no-room-to-unpack";

    /// <summary>There is no room for rows that do not fit into the memory that was stated.</summary>
    public const string NoRoomToSpill = "no-room-to-spill";

    /// <summary>The memory that was stated does not hold the rows of one person.</summary>
    public const string MemoryTooSmall = "memory-too-small";

    /// <summary>An export has more rows than can be told apart.</summary>
    public const string TooManyRows = "too-many-rows";

    /// <summary>A workbook cannot be read.</summary>
    public const string UnreadableWorkbook = "unreadable-workbook";

    /// <summary>A Parquet file cannot be read.</summary>
    public const string UnreadableParquet = "unreadable-parquet";

    /// <summary>A column of a Parquet file that is needed is of a kind that is not read.</summary>
    public const string UnsupportedColumn = "unsupported-column";

    /// <summary>A column of a Parquet file that nothing is read from is of a kind that is not read.</summary>
    public const string UnreadColumn = "unread-column";

    /// <summary>The sheet of a workbook cannot be told.</summary>
    public const string AmbiguousSheets = "ambiguous-sheets";

    /// <summary>The program file names a sheet that the workbook does not have.</summary>
    public const string MissingSheet = "missing-sheet";

    /// <summary>Headings of a sheet stand in merged cells.</summary>
    public const string MergedHeadings = "merged-headings";

    /// <summary>A sheet has merged cells below its headings.</summary>
    public const string MergedCells = "merged-cells";

    /// <summary>Cells of a sheet hold an error.</summary>
    public const string ErrorCells = "error-cells";

    /// <summary>FHIR resources for another export than the confirmatory one.</summary>
    public const string ObservationsElsewhere = "observations-elsewhere";

    /// <summary>A line of totals.</summary>
    public const string TotalsLine = "totals-line";

    /// <summary>A required date has a year of two figures.</summary>
    public const string TwoDigitYear = "two-digit-year";

    /// <summary>A line of resources is no JSON object.</summary>
    public const string MalformedLine = "malformed-line";

    /// <summary>A resource is no Observation.</summary>
    public const string NotAnObservation = "not-an-observation";

    /// <summary>An Observation is not final, or was withdrawn.</summary>
    public const string ResultNotFinal = "result-not-final";

    /// <summary>An Observation has an extension that may change its meaning.</summary>
    public const string ModifiedObservation = "modified-observation";

    /// <summary>Value and interpretation of an Observation differ.</summary>
    public const string ContradictoryObservation = "contradictory-observation";

    /// <summary>Every code with its severity, meaning and advice.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        new(MissingFolder, Severity.Error, "The folder does not exist.", "Check the path."),
        new(MissingFile, Severity.Error, "An export has no file in the folder.", "Put it there, or name it in the program file under exports."),
        new(UnreadableFile, Severity.Error, "A file cannot be opened.", "Check that it exists, that you may read it and that no other program holds it."),
        new(ChangedWhileRead, Severity.Error, "A file changed while it was read.", "Wait until the export is written to its end, or read a copy."),
        new(EmptyFile, Severity.Error, "A file is empty.", "Export it again."),
        new(NotText, Severity.Error, "A file is not text.", "Export it as CSV."),
        new(NoRows, Severity.Error, "A file has headings but no rows.", "Export it again, with its rows."),
        new(ReadAsWindows1252, Severity.Note, "A file is not valid UTF-8 and was read as Windows-1252.", "Export it as UTF-8 if letters look wrong."),
        new(UnclosedQuote, Severity.Error, "A quote is never closed, or closes on a later line in the middle of text, so rows cannot be told apart.",
            "Close or remove the quote on the line named."),
        new(RecordTooLong, Severity.Error, "A record is longer than 1 MiB.", "Check line ends and quotes at the line named."),
        new(TooManyColumns, Severity.Error, "A file has more columns than a spreadsheet has.", "Export only the columns that are needed."),
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
        new(NamesPeople, Severity.Error, "A person or operator column holds what looks like names, e-mail addresses, telephone or government numbers, or dates of birth; or a site, region, lot or kit column e-mail addresses or such numbers.",
            "Replace them by keyed pseudonyms before the export leaves its owner."),
        new(MalformedRow, Severity.Warning, "Text follows a closing quote, so the row's fields are in doubt; it was set aside.", "Correct the quotes on the line named."),
        new(TooManyFields, Severity.Warning, "A row has more fields than headings, so its values may stand in the wrong columns; it was set aside.",
            "Put quotes around text that holds the delimiter."),
        new(BlankRow, Severity.Warning, "A row has delimiters but no value; it was set aside.", "Remove it."),
        new(MissingValue, Severity.Warning, "A required field is blank; the row was set aside.", "Fill it in the source."),
        new(UnreadableDate, Severity.Warning, "A required date cannot be read or does not exist; the row was set aside.", "Write it as in ISO 8601, or state dateOrder."),
        new(UnknownResult, Severity.Warning, "A result is no known word; the row was set aside.", "Say what it means in the program file under exports, words."),
        new(UnreadableNumber, Severity.Warning, "A required number cannot be read; the row was set aside.", "Write a whole number."),
        new(NameTooLong, Severity.Warning, "The name of a site, region, lot, kit, operator or sampling stratum is longer than 200 bytes; a row with such a site was set aside, others count as not recorded.", "Look for a missing quote, or text in the wrong column."),
        new(UnreadableValue, Severity.Warning, "A value that is not required cannot be read and counts as not recorded.", "Correct it, or say what it means under exports, words."),
        new(ResultAgainstLines, Severity.Warning, "The result word and the lines seen say different things; the word was taken.", "Correct one of them in the source."),
        new(NothingUsable, Severity.Error, "Every row of a required export was set aside.", "Look at the other diagnostics: often one column is not understood."),
        new(LinesBeforeHeadings, Severity.Note, "Lines stand before the headings of a file; they were not read.", "Nothing, if the line named holds the headings."),
        new(FileOutsideFolder, Severity.Error, "A file that was named or found lies outside of the program's folder.", "Put the file into the folder, and name it relative to it."),
        new(CourseUnusable, Severity.Error, "The file of the course by day has a missing heading, a figure outside of what is possible, or too few or too many lines.", "Write the headings day,detection,infectiousness, and below them a line for each day."),
        new(FileNotRead, Severity.Warning, "A file was not read: it is called like an export but has another ending, or it is called like none and there is no confirmatory export.", "Save it as CSV, as a workbook (.xlsx), as Parquet (.parquet) or as newline-delimited FHIR (.ndjson), or call it otherwise; name a confirmatory export so that it begins with confirmatory, or in the program file."),
        new(TwoFormats, Severity.Error, "Two files have the same name but for what tells their format, so they may hold the same rows.", "Remove one, or name the files to read in the program file under exports, files."),
        new(DamagedArchive, Severity.Error, "A compressed file is cut off or damaged.", "Copy or export it again."),
        new(SuspiciousArchive, Severity.Error, "A file unpacks to far more than an export does, or holds what no spreadsheet program writes.", "Check where it comes from; export it as CSV."),
        new(NoRoomToSpill, Severity.Error, "The disk of temporary files has no room for the rows that do not fit into the memory stated.", "Make room there, name a folder with more room in TMPDIR (TMP on Windows), or state more memory."),
        new(MemoryTooSmall, Severity.Error, "The rows of one person do not fit into the memory stated.", "Check that the column person holds a pseudonym of each person; if it does, state more memory."),
        new(TooManyRows, Severity.Error, "An export has more than 4,294,967,295 rows.", "Split it by sites or by time, and evaluate the parts."),
        new(NoRoomToUnpack, Severity.Error, "A file that is not plain text is longer, unpacked, than may be written into temporary files.", "Unpack it, or export it as CSV: text is read where it lies."),
        new(UnreadableWorkbook, Severity.Error, "A workbook cannot be read.", "Save it anew as .xlsx, or export it as CSV."),
        new(UnreadableParquet, Severity.Error, "A Parquet file is cut off, damaged, encrypted or made in a way that is not read.", "Export it again, or export it as CSV."),
        new(UnsupportedColumn, Severity.Error, "A column of a Parquet file that is needed is nested, or of a kind that is not read.", "Write it as text, a number, a date or a timestamp."),
        new(UnreadColumn, Severity.Warning, "A column of a Parquet file that nothing is read from is nested, or of a kind that is not read; it was left out.", "Nothing, if it is not needed; it was not looked through for what names people."),
        new(AmbiguousSheets, Severity.Error, "No sheet of a workbook, or more than one, has the headings of the export.", "Name the sheets to read in the program file under exports, sheets."),
        new(MissingSheet, Severity.Error, "The program file names a sheet that the workbook does not have.", "Correct exports, sheets in the program file."),
        new(MergedHeadings, Severity.Error, "Headings of a sheet stand in merged cells.", "Give every column one cell with its heading, in one row."),
        new(MergedCells, Severity.Warning, "A sheet has merged cells below its headings; only the first of each holds the value.", "Unmerge them and fill each cell."),
        new(ErrorCells, Severity.Warning, "Cells of a sheet hold an error instead of a value; they were read as blank.", "Correct the formulas."),
        new(ObservationsElsewhere, Severity.Error, "FHIR resources are read for the confirmatory export only.", "Export the others as CSV or as a workbook."),
        new(TotalsLine, Severity.Note, "A line of totals among the rows; it was set aside.", "Nothing."),
        new(TwoDigitYear, Severity.Warning, "A required date has a year of two figures; the row was set aside.", "Write four figures, or state twoDigitYears in the program file."),
        new(MalformedLine, Severity.Warning, "A line of resources is no JSON object; it was set aside.", "Correct the export."),
        new(NotAnObservation, Severity.Warning, "A resource is no Observation; it was set aside.", "Leave such resources out of the export."),
        new(ResultNotFinal, Severity.Warning, "The status of an Observation says that it is not final or was withdrawn; it was set aside.", "Export it again once it is final."),
        new(ModifiedObservation, Severity.Warning, "An Observation has a modifierExtension or implicitRules, which may change its meaning; it was set aside.", "Ask the laboratory for the plain result."),
        new(ContradictoryObservation, Severity.Warning, "Value and interpretation of an Observation say different things; it was set aside.", "Ask the laboratory which one holds."),
    ];
}
