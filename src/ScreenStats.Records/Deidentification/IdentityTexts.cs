using System.Globalization;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Validation;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Deidentification;

/// <summary>What is said of a column that names people. Never holds a value.</summary>
internal static class IdentityTexts
{
    /// <summary>A person or operator column that is refused.</summary>
    public static Diagnostic Refused(ExportKind export, string column, string file, ColumnJudgement judged) => new(
        ReadingDiagnostics.NamesPeople, Severity.Error, file, null, column,
        $"In the column {column} of the {export.ToString().ToLowerInvariant()} export, {Share(judged)} look like {judged.What}. {FindingTexts.Remedy(column)}");

    /// <summary>Names of sites, lots or kits that are addresses or numbers of people.</summary>
    public static Diagnostic RefusedLevels(string column, string file, ColumnJudgement judged) => new(
        ReadingDiagnostics.NamesPeople, Severity.Error, file, null, column,
        $"In the column {column} of the {Export(column)} export, {Share(judged)} look like {judged.What}. Nothing was evaluated: reports show the names of {Plural(column)}. "
        + $"Put the {column} into that column, or leave the column out; where these are names of {Plural(column)}, write them with a letter before, such as {char.ToUpperInvariant(column[0])}-.");

    /// <summary>Names of sites, lots or kits that may be names of people; they may be right, so it is a warning.</summary>
    public static Diagnostic NamedLevels(string column, string file, ColumnJudgement judged) => new(
        PrivacyDiagnostics.IdentifierLevels, Severity.Warning, file, null, column,
        $"In the column {column} of the {Export(column)} export, {Share(judged)} look like names of people, and reports show the names of {Plural(column)}; messages do not repeat them. "
        + $"If they are people, keep the report to yourself and put the {column} into that column, or replace them by pseudonyms (screenstats pseudonymize); if not, nothing needs to be done.");

    private static string Export(string column) => column switch { CanonicalColumns.SamplingStratum => "confirmatory", CanonicalColumns.Region => "sites", _ => "screening" };

    private static string Plural(string column) => column == CanonicalColumns.SamplingStratum ? "sampling strata" : column + "s";

    /// <summary>A column that is not read but should not be there; null where nothing speaks against it.</summary>
    public static Diagnostic? Unread(string file, int field, string heading, ValueSample sample) =>
        Warning(file, field, heading, sample, "is not read", "Leave it out before the exports leave their owner: screenstats pseudonymize with --drop.");

    /// <summary>A column that pseudonymize left as it was but should not have; null where nothing speaks against it.</summary>
    public static Diagnostic? Kept(string file, int field, string heading, ValueSample sample) =>
        Warning(file, field, heading, sample, "was left as it was",
            "Do not pass the result on: remove it and write it again with --drop for this column, or --generalise for a date.");

    private static Diagnostic? Warning(string file, int field, string heading, ValueSample sample, string fate, string advice)
    {
        var announced = SafeHarborTexts.OfHeading(heading);
        var judged = ColumnJudgement.OfUnread(sample);
        if (announced == SafeHarbor.None && judged.Identifier == SafeHarbor.None) return null;
        var shown = ShownHeading.Of(heading);
        var number = (field + 1).ToString(CultureInfo.InvariantCulture);
        var which = shown.Length == 0 ? $"column {number}" : $"column {number} (\"{shown}\")";
        var because = judged.Identifier == SafeHarbor.None
            ? "is by its heading"
            : $"holds what looks like {judged.What} ({Share(judged)}):";
        var identifier = judged.Identifier == SafeHarbor.None ? announced : judged.Identifier;
        return new Diagnostic(
            judged.Identifier == SafeHarbor.None ? PrivacyDiagnostics.IdentifierHeading : PrivacyDiagnostics.IdentifierValues, Severity.Warning, file, null, "",
            $"In {file} {which} {fate}, and {because} one of the 18 identifiers of the Safe Harbor list, 45 CFR 164.514(b)(2): {SafeHarborTexts.Of(identifier)}. {advice}");
    }

    private static string Share(ColumnJudgement judged) =>
        $"{judged.Values.ToString(CultureInfo.InvariantCulture)} of {judged.Of.ToString(CultureInfo.InvariantCulture)} different values looked at";
}
