namespace ScreenStats.Records.Formats.Converting;

/// <summary>How messages about the sheets of a workbook speak of what is looked for.</summary>
/// <param name="Named">Who names a sheet: "the program file names ...".</param>
/// <param name="Headings">Whose headings fit: "the headings of ...".</param>
/// <param name="Needed">Which headings are missing: "the export needs".</param>
/// <param name="Say">What to do where several sheets fit.</param>
/// <param name="SayBoth">What to do where none does.</param>
internal sealed record SheetWords(string Named, string Headings, string Needed, string Say, string SayBoth)
{
    /// <summary>Of an export of a program.</summary>
    public static SheetWords Of(string export) => new(
        $"the program file names (exports.{export}.sheets)", $"the headings of the {export} export", $"the {export} export needs",
        $"Say in the program file which are to be read: exports.{export}.sheets.",
        $"Say in the program file which is to be read (exports.{export}.sheets) and which headings hold its columns (exports.{export}.columns).");

    /// <summary>Of columns that are named one by one.</summary>
    public static SheetWords OfColumns { get; } = new(
        "--sheet names", "the headings that were named", "were named", "Say with --sheet which is to be read.",
        "Say with --sheet which is to be read, and write the headings as they stand there.");
}
