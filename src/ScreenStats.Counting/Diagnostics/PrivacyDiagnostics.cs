using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>The codes of what may name or harm people.</summary>
public static class PrivacyDiagnostics
{
    /// <summary>A column that is not read has a heading of one of the 18 identifiers of the Safe Harbor list.</summary>
    public const string IdentifierHeading = "identifier-heading";

    /// <summary>A column that is not read has values that look like one of the 18 identifiers of the Safe Harbor list.</summary>
    public const string IdentifierValues = "identifier-values";

    /// <summary>Names of sites, lots or kits look like names of people.</summary>
    public const string IdentifierLevels = "identifier-levels";

    /// <summary>A row cannot be split into its columns without doubt, so nothing was pseudonymized.</summary>
    public const string ColumnsInDoubt = "columns-in-doubt";

    /// <summary>Cells that a spreadsheet would run as formulas got an apostrophe.</summary>
    public const string FormulaGuarded = "formula-guarded";

    /// <summary>What is no date was left out of a column of dates that is generalised.</summary>
    public const string DateNotGeneralised = "date-not-generalised";

    /// <summary>Free text of resources that may name people was left out.</summary>
    public const string TextLeftOut = "text-left-out";

    /// <summary>Every code with its severity, meaning and advice.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        new(IdentifierHeading, Severity.Warning, "A column that is not read is by its heading one of the 18 identifiers of the Safe Harbor list, 45 CFR 164.514(b)(2).",
            "Leave the column out before the exports leave their owner: pseudonymize with --drop."),
        new(IdentifierValues, Severity.Warning, "A column that is not read holds what looks like one of the 18 identifiers of the Safe Harbor list, 45 CFR 164.514(b)(2).",
            "Leave the column out before the exports leave their owner: pseudonymize with --drop."),
        new(IdentifierLevels, Severity.Warning, "Names of sites, lots or kits look like names of people; reports show them, messages do not.",
            "If they are people, keep the report to yourself and put the site, lot or kit into that column; if not, nothing."),
        new(ColumnsInDoubt, Severity.Error, "A row of a file that is to be pseudonymized cannot be split into its columns without doubt, so nothing was written.",
            "Correct the quotes or delimiters on the line named."),
        new(FormulaGuarded, Severity.Note, "Cells that begin as a spreadsheet's formula does got an apostrophe before them.",
            "Nothing, unless lots or other codes begin with such a sign: then they differ from those of other exports by the apostrophe."),
        new(DateNotGeneralised, Severity.Warning, "A column of dates that is generalised holds what is no date; it was left out.", "State --date-order, or correct the source."),
        new(TextLeftOut, Severity.Warning, "Resources say a result or a method in free text that is long or may name people; it was left out of the file with pseudonyms.",
            "Ask the laboratory for coded results, or write the file as CSV."),
    ];
}
