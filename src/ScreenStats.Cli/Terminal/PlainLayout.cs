using System.Text;

namespace ScreenStats.Cli.Terminal;

/// <summary>
/// Paragraphs and tables of plain letters that fit: what the drawing library would make of them, without it. A calculator's answer is
/// nothing else, and to load and compile the library takes longer than to compute it.
/// </summary>
internal static class PlainLayout
{
    private const int Gap = 2;
    private const string End = "\e[0m";

    private const string Bold = "\e[1m";
    private const string Underline = "\e[4m";

    /// <summary>A line in bold.</summary>
    /// <param name="text">The text, of one line.</param>
    /// <param name="width">Columns of the screen.</param>
    /// <param name="styled">Whether it is bold, as on a terminal.</param>
    /// <returns>The line with its end; null where the text is not plain or does not fit.</returns>
    public static string? Title(string text, int width, bool styled) =>
        Paragraph(text, width) is { } made && text.Length <= width ? styled ? Bold + text + End + "\n" : made : null;

    /// <summary>A paragraph, broken between words.</summary>
    /// <param name="text">The text, of one line.</param>
    /// <param name="width">Columns of a line.</param>
    /// <returns>Its lines, each with its end; null where the text is not plain.</returns>
    public static string? Paragraph(string text, int width)
    {
        if (!Plain(text)) return null;
        var lines = new StringBuilder(text.Length + 1);
        var used = 0;
        for (var at = 0; at < text.Length;)
        {
            var end = text.IndexOf(' ', at);
            if (end < 0) end = text.Length;
            var length = end - at;
            if (length == 0 || length > width) return null;
            if (used > 0)
            {
                var fits = used + 1 + length <= width;
                lines.Append(fits ? ' ' : '\n');
                used = fits ? used + 1 : 0;
            }

            lines.Append(text, at, length);
            used += length;
            at = end + 1;
        }

        return text[^1] == ' ' ? null : lines.Append('\n').ToString();
    }

    /// <summary>A table without borders.</summary>
    /// <param name="columns">Its columns.</param>
    /// <param name="rows">Its cells.</param>
    /// <param name="width">Columns of the screen.</param>
    /// <param name="styled">Whether headings are underlined, as on a terminal.</param>
    /// <returns>Its lines, each with its end; null where a cell is not plain or the table does not fit.</returns>
    public static string? Table(IReadOnlyList<TableColumnPlan> columns, IReadOnlyList<IReadOnlyList<string>> rows, int width, bool styled)
    {
        var widths = new int[columns.Count];
        var headed = false;
        for (var column = 0; column < widths.Length; column++)
        {
            var heading = columns[column].Heading;
            if (heading.Length > 0 && !Plain(heading)) return null;
            headed |= heading.Length > 0;
            widths[column] = heading.Length;
        }

        for (var row = 0; row < rows.Count; row++)
        {
            if (rows[row].Count != widths.Length) return null;
            for (var column = 0; column < widths.Length; column++)
            {
                var cell = rows[row][column];
                if (!Plain(cell)) return null;
                widths[column] = Math.Max(widths[column], cell.Length);
            }
        }

        var all = 0;
        for (var column = 0; column < widths.Length; column++)
        {
            if (widths[column] == 0) return null;
            all += widths[column] + Gap;
        }

        if (rows.Count == 0 || all > width) return null;
        var lines = new StringBuilder((rows.Count + 1) * (all + 1));
        if (headed)
        {
            for (var column = 0; column < widths.Length; column++) Cell(columns[column].Heading, column, styled);
            Close();
        }

        for (var row = 0; row < rows.Count; row++)
        {
            for (var column = 0; column < widths.Length; column++) Cell(rows[row][column], column, false);
            Close();
        }

        return lines.ToString();

        void Cell(string text, int column, bool underlined)
        {
            var space = widths[column] - text.Length;
            if (columns[column].Right) lines.Append(' ', space);
            if (underlined && text.Length > 0) lines.Append(Underline).Append(text).Append(End);
            else lines.Append(text);
            lines.Append(' ', columns[column].Right ? Gap : space + Gap);
        }

        void Close()
        {
            while (lines.Length > 0 && lines[^1] == ' ') lines.Length--;
            lines.Append('\n');
        }
    }

    // Letters of one column each, and no line end.
    private static bool Plain(string text) => text.Length > 0 && !text.AsSpan().ContainsAnyExceptInRange(' ', '~');
}
