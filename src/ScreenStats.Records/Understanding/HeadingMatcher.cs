using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Records.Understanding;

/// <summary>Finds the column of a file that each canonical column is read from.</summary>
internal static class HeadingMatcher
{
    /// <summary>Columns of a file at most.</summary>
    public const int MostHeadings = 16_384;

    private const int MostRepeated = 10;

    /// <summary>For each canonical column the field it is read from, or none; what is wrong goes to the diagnostics.</summary>
    public static HeadingMatch[] Match(
        ExportKind export, string file, IReadOnlyList<string> headings, ExportSettings settings, int? line, List<Diagnostic> diagnostics)
    {
        var columns = CanonicalColumns.Of(export);
        if (headings.Count > MostHeadings)
        {
            diagnostics.Add(new Diagnostic(ReadingDiagnostics.TooManyColumns, Severity.Error, file, line, "",
                string.Create(System.Globalization.CultureInfo.InvariantCulture,
                    $"{file} has {headings.Count:N0} columns; at most {MostHeadings:N0} are read, as many as a spreadsheet has. Export only the columns that are needed.")));
            return [.. Enumerable.Repeat(HeadingMatch.Absent, columns.Count)];
        }

        var folded = headings.Select(TextFold.Fold).ToArray();
        var bare = headings.Select(heading => TextFold.Fold(HeadingText.WithoutBrackets(heading))).ToArray();
        Repeated(file, folded, line, diagnostics);
        var taken = new HashSet<int>();
        var matches = new HeadingMatch[columns.Count];
        for (var c = 0; c < columns.Count; c++)
        {
            if (!settings.Columns.TryGetValue(columns[c].Name, out var mapped)) continue;
            var field = Array.IndexOf(folded, TextFold.Fold(mapped));
            if (field < 0)
            {
                diagnostics.Add(new Diagnostic(ReadingDiagnostics.MappedHeadingMissing, Severity.Error, file, line, columns[c].Name,
                    $"The program file reads column {columns[c].Name} from the heading \"{mapped}\", but {file} has no such heading"
                    + (Nearest(mapped, headings) is { } near ? $"; the nearest is \"{near}\". " : ". ") + "Correct exports.columns in the program file."));
                matches[c] = new HeadingMatch(-1, HeadingReason.MissingMapped);
                continue;
            }

            if (taken.Add(field)) matches[c] = new HeadingMatch(field, HeadingReason.Mapped);
            else
            {
                diagnostics.Add(new Diagnostic(ReadingDiagnostics.AmbiguousHeadings, Severity.Error, file, line, columns[c].Name,
                    $"The program file reads two columns from the heading \"{mapped}\" of {file}; give each its own heading."));
            }
        }

        for (var c = 0; c < columns.Count; c++)
        {
            if (matches[c].Reason != HeadingReason.None) continue;
            var field = Array.IndexOf(folded, TextFold.Fold(columns[c].Name));
            if (field >= 0 && taken.Add(field)) matches[c] = new HeadingMatch(field, HeadingReason.Exact);
        }

        for (var c = 0; c < columns.Count; c++)
        {
            if (matches[c].Reason != HeadingReason.None) continue;
            var name = TextFold.Fold(columns[c].Name);
            var fields = Enumerable.Range(0, bare.Length).Where(f => !taken.Contains(f) && bare[f] == name).ToArray();
            Choose(fields, c, HeadingReason.WithUnit);
        }

        for (var c = 0; c < columns.Count; c++)
        {
            if (matches[c].Reason != HeadingReason.None) continue;
            var known = columns[c].Headings.Select(TextFold.Fold).ToHashSet(StringComparer.Ordinal);
            var fields = Enumerable.Range(0, folded.Length).Where(f => !taken.Contains(f) && known.Contains(folded[f])).ToArray();
            if (fields.Length > 0) Choose(fields, c, HeadingReason.Synonym);
            else Choose([.. Enumerable.Range(0, bare.Length).Where(f => !taken.Contains(f) && known.Contains(bare[f]))], c, HeadingReason.WithUnit);
        }

        Missing(export, file, line, columns, matches, headings, diagnostics);
        return [.. matches.Select(match => match.Reason is HeadingReason.None or HeadingReason.MissingMapped ? HeadingMatch.Absent : match)];

        void Choose(int[] fields, int c, HeadingReason reason)
        {
            if (fields.Length > 1)
            {
                diagnostics.Add(new Diagnostic(ReadingDiagnostics.AmbiguousHeadings, Severity.Error, file, line, columns[c].Name,
                    $"In {file} the headings \"{headings[fields[0]]}\" and \"{headings[fields[1]]}\" could both be column {columns[c].Name}; "
                    + "say which in the program file (exports.columns)."));
                matches[c] = new HeadingMatch(-1, HeadingReason.MissingMapped);
            }
            else if (fields.Length == 1 && taken.Add(fields[0])) matches[c] = new HeadingMatch(fields[0], reason);
        }
    }

    /// <summary>Whether every required column, and every column that the program file maps, has its heading.</summary>
    public static bool Complete(ExportKind export, IReadOnlyList<string> headings, ExportSettings settings)
    {
        var wrong = new List<Diagnostic>();
        Match(export, "", headings, settings, 1, wrong);
        return !wrong.Exists(one => one.Code is ReadingDiagnostics.MissingColumn or ReadingDiagnostics.MappedHeadingMissing);
    }

    /// <summary>Finds headings that are the same.</summary>
    public static void Repeated(string file, IReadOnlyList<string> folded, int? line, List<Diagnostic> diagnostics)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var reported = 0;
        for (var f = 0; f < folded.Count && reported < MostRepeated; f++)
        {
            if (folded[f].Length == 0 || first.TryAdd(folded[f], f)) continue;
            var earlier = first[folded[f]];
            reported++;
            diagnostics.Add(new Diagnostic(ReadingDiagnostics.RepeatedHeading, Severity.Error, file, line, "",
                $"{file} has the same heading in columns {earlier + 1} and {f + 1}; rename or remove one of them."));
        }
    }

    private static void Missing(
        ExportKind export, string file, int? line, IReadOnlyList<CanonicalColumn> columns, HeadingMatch[] matches,
        IReadOnlyList<string> headings, List<Diagnostic> diagnostics)
    {
        bool Has(string name)
        {
            for (var c = 0; c < columns.Count; c++)
            {
                if (columns[c].Name == name) return matches[c].Reason != HeadingReason.None;
            }

            return false;
        }

        var missing = columns.Where(column => column.Required && !Has(column.Name)).Select(column => column.Name).ToList();
        if (Has(CanonicalColumns.ControlLine) && Has(CanonicalColumns.TestLine)) missing.Remove(CanonicalColumns.Result);
        if (export == ExportKind.Headcount && !Has(CanonicalColumns.Week) && !Has(CanonicalColumns.Date)) missing.Add(CanonicalColumns.Week);
        if (missing.Count == 0) return;
        var several = missing.Count > 1;
        var named = missing.Select(name => name + Instead(name, export)).ToList();
        var keys = string.Join(", ", missing.Select(name => $"\"{name}\": \"the heading\""));
        diagnostics.Add(new Diagnostic(ReadingDiagnostics.MissingColumn, Severity.Error, file, line, several ? "" : missing[0],
            $"{file} has no heading for the required {(several ? "columns" : "column")} {(several ? string.Join(", ", named.SkipLast(1)) + " and " : "")}{named[^1]} among its {headings.Count}. "
            + $"Add {(several ? "them" : "the column")}, or say in program.json, in the same folder, which {(several ? "headings hold them" : "heading holds it")}: "
            + $"{{ \"exports\": {{ \"{export.ToString().ToLowerInvariant()}\": {{ \"columns\": {{ {keys} }} }} }} }}. inspect lists the headings that were not read."));
    }

    private static string Instead(string name, ExportKind export) => name switch
    {
        CanonicalColumns.Result when export != ExportKind.Confirmatory => " (or control_line and test_line)",
        CanonicalColumns.Week => " (or date)",
        _ => "",
    };

    // What is not near may be a cell of a file whose headings were not found.
    private static string? Nearest(string wanted, IReadOnlyList<string> headings) =>
        headings.Where(heading => Deidentification.ShownHeading.Of(heading).Length > 0 && HeadingText.Near(wanted, heading))
            .OrderBy(heading => HeadingText.Distance(wanted, heading)).ThenBy(heading => heading, StringComparer.Ordinal).FirstOrDefault();
}
