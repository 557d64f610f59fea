using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>Parts of tables that several pages show alike.</summary>
internal static class TableViews
{
    private static readonly HashSet<string> OnlyInFiles = new(StringComparer.Ordinal) { "method", "confidence", "design_effect", "clusters", "cluster_count" };

    /// <summary>A table with all its columns but those of the limits' making; the widened limits in one column, the unwidened ones in the file only.</summary>
    public static TableView Whole(ITable table)
    {
        var names = table.Columns.Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        var widened = names.Contains("widened_lower") && names.Contains("widened_upper");
        var columns = table.Columns
            .Where(column => !OnlyInFiles.Contains(column.Name))
            .Where(column => !(column.Name == "by" && names.Contains("level")))
            .Where(column => !(widened && column.Name is "lower" or "upper"))
            .Where(column => !(column.Name.EndsWith("upper", StringComparison.Ordinal) && names.Contains(column.Name[..^5] + "lower")))
            .Select(column =>
            {
                var upper = column.Name.EndsWith("lower", StringComparison.Ordinal) ? column.Name[..^5] + "upper" : "";
                return column.Name == "level" && names.Contains("by") ? ViewColumn.Part
                    : column.Name == "device" && column == table.Columns[0] ? new ViewColumn(column.Name, WhenEmpty: "all together")
                    : column.Name == "remark" ? ViewColumn.Remark
                    : !names.Contains(upper) ? new ViewColumn(column.Name)
                    : column.Name is "widened_lower" or "lower" ? new ViewColumn(column.Name, "Limits", upper)
                    : new ViewColumn(column.Name, column.Heading.Replace("lower limit", "limits", StringComparison.OrdinalIgnoreCase).Replace("lower", "limits", StringComparison.OrdinalIgnoreCase), upper);
            });
        return new TableView(table, table.Title, [.. columns]);
    }
}
