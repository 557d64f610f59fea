using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Tables;

/// <summary>
/// How many rows of each table a page has room for: all of them as long as they fit into <see cref="Bytes"/> together, else the same number at
/// most for every table, so that the longest are cut first, and of folded tables, which are for those who look closer, a quarter of it. A page must open and sort without a wait, and be mailed.
/// </summary>
internal static class TableRoom
{
    /// <summary>Room for the rows of all tables, with the values behind them. Text, pictures, script and font take less than 1.5 MB beside it, so a page stays below 8 MB.</summary>
    public const long Bytes = 6_300_000;

    // Rows that are weighed of each table, spread over it.
    private const int Weighed = 30;

    // What a row of the page, a cell of words and a figure need beside their text.
    private const int Row = 32;
    private const int Words = 19;
    private const int Figure = 9;

    /// <summary>The pages with the room that each table has.</summary>
    public static ImmutableArray<PageGroup> Of(ImmutableArray<PageGroup> groups, long bytes = Bytes)
    {
        var tables = groups.SelectMany(group => group.Pages).SelectMany(page => page.Tables).Select(view => (Rows: (long)view.Table.RowCount, view.Folded, Each: RowBytes(view))).ToArray();
        long Total(int room) => tables.Sum(table => Math.Min(table.Rows, RoomOf(room, table.Folded)) * table.Each);
        if (Total(int.MaxValue) <= bytes) return groups;
        var (low, high) = (TableView.FirstRows, (int)tables.Max(table => table.Rows));
        while (low + 1 < high)
        {
            var middle = low + ((high - low) / 2);
            if (Total(middle) <= bytes) low = middle;
            else high = middle;
        }

        // A round number reads better: two digits that count.
        var step = (int)Math.Pow(10, Math.Max(0, Math.Floor(Math.Log10(low)) - 1));
        var rows = Math.Max(TableView.FirstRows, low / step * step);
        return [.. groups.Select(group => group with { Pages = [.. group.Pages.Select(page => page with { Tables = [.. page.Tables.Select(view => view with { Room = RoomOf(rows, view.Folded) })] })] })];
    }

    private static int RoomOf(int room, bool folded) => folded ? Math.Max(TableView.FirstRows, room / 4) : room;

    /// <summary>About how many bytes a row takes on the page and behind it, from rows spread over the table.</summary>
    private static long RowBytes(TableView view)
    {
        var table = view.Table;
        if (table.RowCount == 0) return 0;
        var rows = Enumerable.Range(0, Math.Min(Weighed, table.RowCount)).Select(place => (int)((long)place * table.RowCount / Math.Min(Weighed, table.RowCount))).ToArray();
        var bytes = (long)rows.Length * Row;
        for (var column = 0; column < table.Columns.Length; column++)
        {
            var cells = rows.Select(row => table.CellAt(row, column)).ToArray();
            var texts = cells.Select(CsvText.Value).ToArray();
            var distinct = texts.Distinct(StringComparer.Ordinal).Count();
            var words = cells.Any(cell => cell.Kind == CellKind.Text);
            // Behind it: nothing for what holds everywhere, a place for words that come again, no zero before a point.
            bytes += distinct == 1 ? 0 : texts.Sum(text => words ? distinct <= texts.Length / 2 ? 3 : text.Length + 3 : text.Length + (text.StartsWith("0.", StringComparison.Ordinal) ? 0 : 1));
            // On it: nothing for a column without a value and for one method of all rows.
            if (cells.All(cell => cell.Kind == CellKind.Empty) || (distinct == 1 && table.Columns[column].Name.EndsWith("method", StringComparison.Ordinal))) continue;
            var (name, unit) = (table.Columns[column].Name, table.Columns[column].Unit);
            if (view.Columns.FirstOrDefault(shown => shown.Name == name) is { } shown)
                bytes += cells.Sum(cell => (shown == view.Columns[0] ? 0 : unit == Unit.Text && cell.Kind != CellKind.Empty ? Words : Figure) + (shown.AsNotes ? 1 : Rounding.Print(cell, unit).Length));
            else if (view.Columns.Any(other => other.Upper == name)) bytes += cells.Sum(cell => 4 + Rounding.Print(cell, unit).Length);
        }

        return bytes / rows.Length;
    }
}
