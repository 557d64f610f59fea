using System.Collections.Immutable;
using ScreenStats.Reporting.Files;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>
/// How many rows of each table a page has room for: all of them as long as they fit into <see cref="Bytes"/> together, else the same number at
/// most for every table, so that the longest are cut first. A page must open and sort without a wait, and be mailed.
/// </summary>
internal static class TableRoom
{
    /// <summary>Room for the rows of all tables, with the values behind them. Text, pictures, script and font take less than 2.5 MB beside it, so a page stays below 8 MB.</summary>
    public const long Bytes = 5_400_000;

    // Rows that are weighed of each table, spread over it.
    private const int Weighed = 30;

    // What a cell of the page needs beside its text, and a row of it.
    private const int Cell = 11;
    private const int Row = 45;

    /// <summary>The pages with the room that each table has.</summary>
    public static ImmutableArray<PageGroup> Of(ImmutableArray<PageGroup> groups, long bytes = Bytes)
    {
        var tables = groups.SelectMany(group => group.Pages).SelectMany(page => page.Tables).Select(view => (Rows: (long)view.Table.RowCount, Each: RowBytes(view))).ToArray();
        long Total(int room) => tables.Sum(table => Math.Min(table.Rows, room) * table.Each);
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
        return [.. groups.Select(group => group with { Pages = [.. group.Pages.Select(page => page with { Tables = [.. page.Tables.Select(view => view with { Room = rows })] })] })];
    }

    /// <summary>About how many bytes a row takes, from rows spread over the table: each value once as in the file, and once more as the page shows it.</summary>
    private static long RowBytes(TableView view)
    {
        var table = view.Table;
        if (table.RowCount == 0) return 0;
        var step = Math.Max(1, table.RowCount / Weighed);
        var (bytes, weighed) = (0L, 0);
        for (var row = 0; row < table.RowCount; row += step)
        {
            weighed++;
            for (var column = 0; column < table.Columns.Length; column++) bytes += Math.Min(CsvText.Value(table.CellAt(row, column)).Length, 24) + 1;
            foreach (var column in view.Columns) bytes += Cell + Math.Min(CsvText.Value(table.CellAt(row, view.IndexOf(column.Name))).Length, column.Upper is null ? 8 : 18);
        }

        return Row + (bytes / weighed);
    }
}
