using System.Collections.Immutable;
using System.Text;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Reporting.Files;

/// <summary>What stands in every column of every table.</summary>
internal static class ColumnDescriptions
{
    /// <summary>The headings.</summary>
    public static readonly ImmutableArray<string> Headings = ["table", "column", "unit", "meaning"];

    /// <summary>The descriptions as rows.</summary>
    public static IEnumerable<(string Table, string Column, string Unit, string Meaning)> Rows(ImmutableArray<ITable> tables) =>
        tables.SelectMany(table => table.Columns.Select(column => (table.Id, column.Name, Words(column.Unit), column.Meaning)));

    /// <summary>The descriptions as comma-separated text.</summary>
    public static string Csv(ImmutableArray<ITable> tables)
    {
        var text = new StringBuilder();
        CsvText.Row(text, Headings[0], Headings[1], Headings[2], Headings[3]);
        foreach (var (table, column, unit, meaning) in Rows(tables)) CsvText.Row(text, table, column, unit, meaning);
        return text.ToString();
    }

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
