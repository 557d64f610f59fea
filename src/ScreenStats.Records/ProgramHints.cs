using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records;

/// <summary>What is left to say in a program file, as comments to fill in: whoever reads only them must know what to write.</summary>
public static class ProgramHints
{
    private const int MostHeadings = 40;

    /// <summary>The comments for a program file that pins an understanding.</summary>
    /// <param name="understanding">How each export was understood.</param>
    /// <param name="diagnostics">What was found.</param>
    /// <param name="program">The file.</param>
    /// <returns>
    /// In this order: the time zone where none is stated, required columns without a heading, dates whose order is in doubt, words that are not known
    /// (those that may be shown).
    /// </returns>
    public static ImmutableArray<ProgramHint> Of(ImmutableArray<ExportUnderstanding> understanding, ImmutableArray<Diagnostic> diagnostics, JsonObject program)
    {
        ArgumentNullException.ThrowIfNull(program);
        var hints = ImmutableArray.CreateBuilder<ProgramHint>();
        if (!program.ContainsKey("timeZone"))
        {
            var needed = diagnostics.Any(one => one.Code == ReadingDiagnostics.MixedOffsets);
            hints.Add(new([], needed
                ? "Needed: some times have an offset from UTC and others none. Write the zone of those without, and take the slashes away."
                : "No time zone is stated, so times without an offset are taken as they are written. To state one, take the slashes away."));
            hints.Add(new([], "\"timeZone\": \"Europe/Vienna\","));
        }

        foreach (var export in understanding.Where(export => !export.Files.IsEmpty))
        {
            ImmutableArray<string> place = ["exports", export.Export.ToString().ToLowerInvariant()];
            Columns(hints, export, place.Add("columns"));
            if (diagnostics.Any(one => one.Code is ReadingDiagnostics.AmbiguousDates or ReadingDiagnostics.ContradictoryDates && export.Files.Any(file => file.Name == one.File)))
            {
                hints.Add(new(place, "Needed: the order of day and month. Keep what is true, and take the slashes away."));
                hints.Add(new(place, "\"dateOrder\": \"day-first\",  // or \"month-first\""));
            }

            Words(hints, export, place.Add("words"));
        }

        return hints.ToImmutable();
    }

    private static void Columns(ImmutableArray<ProgramHint>.Builder hints, ExportUnderstanding export, ImmutableArray<string> place)
    {
        if (export.Files.All(file => file.HeadingLine is null)) return;
        var required = CanonicalColumns.Of(export.Export).Where(column => column.Required).Select(column => column.Name).ToList();
        var missing = export.Columns.Where(column => !column.Mapped && required.Contains(column.Column)).Select(column => column.Column).ToList();
        bool Has(string name) => export.Columns.Any(column => column.Column == name && column.Mapped);
        if (Has(CanonicalColumns.ControlLine) && Has(CanonicalColumns.TestLine)) missing.Remove(CanonicalColumns.Result);
        if (export.Export == ExportKind.Headcount && !Has(CanonicalColumns.Week) && !Has(CanonicalColumns.Date)) missing.Add(CanonicalColumns.Week);
        if (missing.Count == 0) return;
        var unread = Unread(export).Select(Json).ToList();
        hints.Add(new(place, "Needed: for each column below write the heading that holds it instead of the dots, and take the slashes away."));
        if (unread.Count > 0) hints.Add(new(place, "Headings that were not read: " + string.Join(", ", unread)));
        foreach (var column in missing) hints.Add(new(place, $"\"{column}\": \"...\","));
    }

    private static void Words(ImmutableArray<ProgramHint>.Builder hints, ExportUnderstanding export, ImmutableArray<string> place)
    {
        foreach (var column in export.Columns.Where(column => !column.UnknownWordsShown.IsEmpty && !column.Meanings.IsDefaultOrEmpty))
        {
            hints.Add(new(place, $"Words of {column.Column} that are not known: write what each means ({string.Join(", ", column.Meanings)}) instead of the dots, and take the slashes away."));
            foreach (var word in column.UnknownWordsShown) hints.Add(new(place, $"{Json(word.Word)}: \"...\",  // {FindingTexts.Figure(word.Rows)} rows"));
        }
    }

    /// <summary>The headings that were not read and may be shown.</summary>
    /// <param name="export">How the export was understood.</param>
    /// <returns>Each once, in the order of the files, 40 at most.</returns>
    public static ImmutableArray<string> Unread(ExportUnderstanding export)
    {
        ArgumentNullException.ThrowIfNull(export);
        return
        [
            .. export.Files.SelectMany(file => file.Headings)
                .Where(heading => heading is { Column: null, Heading.Length: > 0 } && !(heading.Heading.StartsWith("(column ", StringComparison.Ordinal) && heading.Heading.EndsWith(')')))
                .Select(heading => heading.Heading).Distinct(StringComparer.Ordinal).Take(MostHeadings),
        ];
    }

    private static string Json(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
}
