using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Shared;

/// <summary>The first columns of tables that are broken down, the same in every table.</summary>
internal static class LevelColumns
{
    public static Column<TRow> By<TRow>(Func<TRow, Grouping> by) =>
        new("by", "By", Unit.Text, "By what the program is broken down.", row => Cell.Text(LevelNames.Of(by(row))));

    public static Column<TRow> Level<TRow>(Func<TRow, string> level) =>
        new("level", "Level", Unit.Text, "The part; empty for the whole program, (none) where nothing is recorded.", row =>
            level(row).Length == 0 ? Cell.Empty : Cell.Text(level(row)));
}
