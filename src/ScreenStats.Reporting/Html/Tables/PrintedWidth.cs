using System.Collections.Immutable;

namespace ScreenStats.Reporting.Html.Tables;

/// <summary>
/// How wide a table would be on paper, in characters, and so how it is printed: as it is, in smaller type, or with its columns wrapped into
/// several lines, headings and rows alike. A browser left alone would shrink the whole print to its widest table, and still cut some.
/// </summary>
internal static class PrintedWidth
{
    // Measured with a wide font (digits of 0.64 of its size) on the 101 tables of the sample's report, in a column of 180 mm: all up to 107
    // of these characters fit in the 8.5 points of printed tables, and all up to 122 in 7.5 points.
    private const int AsItIs = 100;
    private const int InSmallerType = 118;

    // Words in a column need not be shorter than this to stand on one line.
    private const int Words = 16;

    // Space between two columns.
    private const int Between = 2;

    /// <summary>The class of the table in the style sheet; empty for none.</summary>
    /// <param name="headings">Headings of its columns.</param>
    /// <param name="styles">Styles of its columns.</param>
    /// <param name="rows">Its cells.</param>
    public static string Class(ImmutableArray<string> headings, ImmutableArray<string> styles, ImmutableArray<ImmutableArray<TableCell>> rows)
    {
        var width = 0;
        for (var place = 0; place < headings.Length; place++)
        {
            var column = Word(headings[place]);
            foreach (var row in rows) column = Math.Max(column, Needed(row[place], styles[place]));
            width += column + Between;
        }

        return width <= AsItIs ? "" : width <= InSmallerType ? "wide" : "stack";
    }

    private static int Needed(TableCell cell, string style) => style == "n" || cell.Style.EndsWith('d')
        ? Math.Max(cell.Text.Length, cell.Below.Length * 9 / 10)
        : Math.Max(Math.Min(cell.Text.Length, Words), Word(cell.Text));

    /// <summary>The longest stretch that is not broken.</summary>
    private static int Word(string text) => text.Split(' ', '-').Max(word => word.Length);
}
