using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Tests;

/// <summary>A small table with one column for each of the given cells' positions.</summary>
internal static class SmallTable
{
    public static ITable Of(params Cell[][] rows) => new Table<Cell[]>(
        "small",
        "Small",
        "For tests.",
        [.. Enumerable.Range(0, rows.Length == 0 ? 1 : rows[0].Length).Select(index => new Column<Cell[]>($"c{index}", $"Heading {index}", Unit.Text, "A column.", row => row[index]))],
        [.. rows]);
}
