using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records;

/// <summary>A program file that states what reading decided, so that it is not left to the data the next time.</summary>
public static class PinnedProgram
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly JsonDocumentOptions Read = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    /// <summary>The text of a program file.</summary>
    /// <param name="program">The file.</param>
    /// <returns>JSON with a line end behind it.</returns>
    public static string Text(JsonObject program)
    {
        ArgumentNullException.ThrowIfNull(program);
        return program.ToJsonString(Written) + "\n";
    }

    /// <summary>The text of a program file with comments.</summary>
    /// <param name="program">The file.</param>
    /// <param name="hints">The comments; those of one object stand at its beginning, in the order given.</param>
    /// <returns>JSON with comments, which a program file may have, and a line end behind it.</returns>
    public static string Text(JsonObject program, ImmutableArray<ProgramHint> hints)
    {
        ArgumentNullException.ThrowIfNull(program);
        var copy = (JsonObject)program.DeepClone();
        for (var h = hints.Length - 1; h >= 0; h--)
        {
            var at = copy;
            foreach (var name in hints[h].Path)
            {
                if (at[name] is not JsonObject inner) at[name] = inner = [];
                at = inner;
            }

            at.Insert(0, Mark(h), null);
        }

        var text = Text(copy);
        for (var h = 0; h < hints.Length; h++)
        {
            // The mark is a key of its own line; a comment ends where its line does.
            var mark = $"\"{Mark(h)}\": null";
            var comment = "// " + string.Concat(hints[h].Text.Select(sign => char.IsControl(sign) || sign is '\u2028' or '\u2029' ? ' ' : sign));
            text = text.Replace(mark + ",\n", comment + "\n", StringComparison.Ordinal).Replace(mark + "\n", comment + "\n", StringComparison.Ordinal);
        }

        return text;
    }

    /// <summary>The program file that pins an understanding.</summary>
    /// <remarks>
    /// What the present file says of other things is kept, its comments are not. Under exports stand the heading of every column, the words
    /// that are not the canonical ones, and the order of day and month where the dates needed one. What next month's export of the same
    /// source may have otherwise without any doubt is left to be recognised, and kept where the present file states it: names of files
    /// and sheets, and that all dates are ISO 8601. So is a heading that differs between the files of one export. Words that mean that
    /// nothing is recorded are known anyway.
    /// </remarks>
    /// <param name="understanding">How each export was understood.</param>
    /// <param name="present">Text of the present program file; null without one.</param>
    /// <returns>The file.</returns>
    /// <exception cref="JsonException">The present text is not JSON.</exception>
    public static JsonObject Of(ImmutableArray<ExportUnderstanding> understanding, string? present = null)
    {
        var program = present is null ? [] : JsonNode.Parse(present, null, Read) as JsonObject ?? throw new JsonException("A program file is an object.");
        var exports = program["exports"] as JsonObject ?? [];
        program.Remove("exports");
        foreach (var export in understanding.Where(export => !export.Files.IsEmpty))
        {
            var name = export.Export.ToString().ToLowerInvariant();
            var own = exports[name] as JsonObject ?? [];
            exports.Remove(name);
            Pin(own, export);
            exports.Add(name, own);
        }

        program.Add("exports", exports);
        return program;
    }

    // No key of a program file begins so.
    private static string Mark(int hint) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"//{hint}");

    private static void Pin(JsonObject own, ExportUnderstanding export)
    {
        var columns = new JsonObject();
        var withHeadings = export.Files.Where(file => file.HeadingLine is not null).ToList();
        foreach (var column in export.Columns.Where(column => column.Mapped))
        {
            var headings = withHeadings.Select(file => file.Headings.FirstOrDefault(heading => heading.Column == column.Column)?.Heading ?? "").DistinctBy(TextFold.Fold).ToList();
            if (headings is [{ Length: > 0 } heading]) columns[column.Column] = heading;
        }

        if (columns.Count > 0) own["columns"] = columns;
        var words = own["words"] as JsonObject ?? [];
        var stated = words.Select(word => TextFold.Fold(word.Key)).ToHashSet(StringComparer.Ordinal);
        foreach (var word in export.Columns.SelectMany(column => column.Words).Where(word => word.TakenFor.Length > 0 && TextFold.Fold(word.Word) != TextFold.Fold(word.TakenFor)).OrderBy(word => word.Word, StringComparer.Ordinal))
        {
            if (stated.Add(TextFold.Fold(word.Word))) words[word.Word] = word.TakenFor;
        }

        own.Remove("words");
        if (words.Count > 0) own["words"] = words;
        // ISO 8601 needs no order, so none was decided: a stated one would refuse dates of another form that leave no doubt.
        var orders = export.Columns.Where(column => column.DateOrder is not null and not DateOrder.Iso).Select(column => column.DateOrder!.Value).Distinct().ToList();
        if (orders.Count != 1 || withHeadings.Count == 0 || export.Columns.Any(column => column.DateOrder == DateOrder.Iso && column.DateOrderWhy == DateOrders.MostlyIso)) return;
        own.Remove("dateOrder");
        own["dateOrder"] = orders[0] == DateOrder.DayFirst ? "day-first" : "month-first";
    }
}
