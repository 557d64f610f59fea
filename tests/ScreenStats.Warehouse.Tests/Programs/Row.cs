namespace ScreenStats.Warehouse.Tests.Programs;

/// <summary>A row as it stands in an export: text by column, nothing where it is blank.</summary>
internal sealed class Row
{
    private readonly Dictionary<string, string> cells = new(StringComparer.Ordinal);

    /// <summary>The text of a column; empty where it is blank.</summary>
    public string this[string column]
    {
        get => cells.GetValueOrDefault(column, "");
        set
        {
            if (value.Length > 0) cells[column] = value;
            else cells.Remove(column);
        }
    }

    /// <summary>Rows from text with a line of column names, split at commas.</summary>
    public static IReadOnlyList<Row> Of(string text)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var columns = lines[0].Split(',');
        var rows = new List<Row>();
        foreach (var line in lines[1..])
        {
            var fields = line.Split(',');
            if (fields.Length > columns.Length) throw new InvalidOperationException($"A row has more fields than columns: {line}");
            var row = new Row();
            for (var c = 0; c < fields.Length; c++) row[columns[c]] = fields[c].Trim();
            rows.Add(row);
        }

        return rows;
    }
}
