using System.Globalization;
using System.Text;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files;

/// <summary>
/// Comma-separated text by RFC 4180, with line feeds. Numbers in round-trip precision, dates by ISO 8601; an undefined cell is empty
/// (its reason stands in findings.json), a hidden one is the word <c>hidden</c>. A text that a spreadsheet would run as a
/// formula is preceded by an apostrophe.
/// </summary>
internal static class CsvText
{
    /// <summary>A table with its headings.</summary>
    public static string Of(ITable table)
    {
        var text = new StringBuilder();
        for (var column = 0; column < table.Columns.Length; column++)
        {
            if (column > 0) text.Append(',');
            Field(text, table.Columns[column].Name);
        }

        text.Append('\n');
        for (var row = 0; row < table.RowCount; row++)
        {
            for (var column = 0; column < table.Columns.Length; column++)
            {
                if (column > 0) text.Append(',');
                Field(text, table.CellAt(row, column));
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    /// <summary>A row of texts and whole numbers; null is an empty cell.</summary>
    public static void Row(StringBuilder text, params ReadOnlySpan<object?> fields)
    {
        for (var index = 0; index < fields.Length; index++)
        {
            if (index > 0) text.Append(',');
            switch (fields[index])
            {
                case null: break;
                case long number: text.Append(number.ToString(CultureInfo.InvariantCulture)); break;
                case string words: Field(text, words); break;
                default: throw new ArgumentOutOfRangeException(nameof(fields), index, "A field is a text, a whole number or null.");
            }
        }

        text.Append('\n');
    }

    /// <summary>A text that no spreadsheet takes for a formula.</summary>
    public static string Guarded(string words) =>
        words is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20', ..] ? "'" + words : words;

    /// <summary>What stands in the field of a cell, before it is quoted.</summary>
    public static string Value(Cell cell) => cell.Kind switch
    {
        CellKind.Empty or CellKind.Undefined => "",
        CellKind.Text => Guarded(cell.AsText),
        _ => cell.ToString(),
    };

    private static void Field(StringBuilder text, Cell cell) => Quoted(text, Value(cell));

    private static void Field(StringBuilder text, string words) => Quoted(text, Guarded(words));

    private static void Quoted(StringBuilder text, string guarded)
    {
        if (guarded.AsSpan().IndexOfAny(",\"\r\n") < 0)
        {
            text.Append(guarded);
            return;
        }

        text.Append('"').Append(guarded.Replace("\"", "\"\"", StringComparison.Ordinal)).Append('"');
    }
}
