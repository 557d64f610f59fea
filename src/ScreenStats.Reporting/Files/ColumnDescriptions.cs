using System.Collections.Immutable;
using System.Text;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files;

/// <summary>What stands in every column of every table.</summary>
internal static class ColumnDescriptions
{
    /// <summary>Its own columns: name in files, heading for people, meaning.</summary>
    public static readonly ImmutableArray<(string Name, string Heading, string Meaning)> Fields =
    [
        ("table", "Table", "Base name of the table's file."), ("column", "Column", "Name of the column."), ("unit", "Unit", "Unit of its figures, or what else stands in it."),
        ("meaning", "Meaning", "What stands in it."), ("method", "Method", "The method that made its figures; empty for counts, texts and days."),
    ];

    /// <summary>The descriptions as rows.</summary>
    public static IEnumerable<(string Table, string Column, string Unit, string Meaning, string Method)> Rows(ImmutableArray<ITable> tables) =>
        tables.SelectMany(table => table.Columns.Select((column, index) => (table.Id, column.Name, Words(column.Unit), column.Meaning, Method(table, index))));

    /// <summary>The descriptions as comma-separated text.</summary>
    public static string Csv(ImmutableArray<ITable> tables)
    {
        var text = new StringBuilder();
        CsvText.Row(text, [.. Fields.Select(field => (object?)field.Name)]);
        foreach (var (table, column, unit, meaning, method) in Rows(tables)) CsvText.Row(text, table, column, unit, meaning, method);
        return text.ToString();
    }

    /// <summary>The method of a column's numbers: its name, or the column that names it row by row; empty for counts, texts and days.</summary>
    private static string Method(ITable table, int column) =>
        table.Columns[column].Method ?? (TableMethods.NamedBy(table, column) is >= 0 and var named ? "see column " + table.Columns[named].Name : "");

    /// <summary>A unit in words.</summary>
    public static string Words(Unit unit) => unit switch
    {
        Unit.Text => "text",
        Unit.Count => "count",
        Unit.Proportion => "fraction from 0 to 1",
        Unit.Difference => "difference of fractions, from -1 to 1",
        Unit.PerThousand => "per 1,000",
        Unit.Ratio => "number",
        Unit.PValue => "probability",
        Unit.Date => "date (ISO 8601)",
        Unit.Hours => "hours",
        Unit.Days => "days",
        _ => "number",
    };
}
