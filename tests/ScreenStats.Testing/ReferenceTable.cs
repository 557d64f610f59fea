namespace ScreenStats.Testing;

/// <summary>
/// A table of values from outside: <c>tests/reference/*.csv</c> with the columns <c>id, inputs…, expected…, tolerance, kind, source</c>.
/// Numbers are invariant; text between double quotes may hold commas.
/// </summary>
public sealed class ReferenceTable
{
    private ReferenceTable(string name, IReadOnlyList<string> columns, IReadOnlyList<ReferenceRow> rows)
    {
        Name = name;
        Columns = columns;
        Rows = rows;
    }

    public string Name { get; }

    public IReadOnlyList<string> Columns { get; }

    public IReadOnlyList<ReferenceRow> Rows { get; }

    /// <summary>Every table of the folder, in order of its name.</summary>
    public static IReadOnlyList<ReferenceTable> All() =>
        [.. Directory.GetFiles(RepositoryRoot.Combine("tests", "reference"), "*.csv").Order(StringComparer.Ordinal).Select(Read)];

    /// <summary>The rows of <c>name.csv</c> and, where it exists, of <c>name-generated.csv</c>.</summary>
    public static IReadOnlyList<ReferenceRow> Load(string name)
    {
        var tables = new[] { name, name + "-generated" }
            .Select(part => RepositoryRoot.Combine("tests", "reference", part + ".csv"))
            .Where(File.Exists)
            .Select(Read)
            .ToList();
        return tables.Count == 0
            ? throw new FileNotFoundException($"tests/reference holds neither {name}.csv nor {name}-generated.csv.")
            : [.. tables.SelectMany(table => table.Rows)];
    }

    private static ReferenceTable Read(string path)
    {
        var lines = File.ReadAllText(path).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var columns = Fields(lines[0]);
        var name = Path.GetFileNameWithoutExtension(path);
        var rows = new List<ReferenceRow>(lines.Length - 1);
        for (var i = 1; i < lines.Length; i++)
        {
            var fields = Fields(lines[i]);
            if (fields.Count != columns.Count)
                throw new FormatException($"{name}.csv line {i + 1}: {fields.Count} fields, {columns.Count} columns.");
            rows.Add(new ReferenceRow(name, columns, fields));
        }

        return new ReferenceTable(name, columns, rows);
    }

    private static List<string> Fields(string line)
    {
        var fields = new List<string>();
        var field = new System.Text.StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (quoted && c == '"' && i + 1 < line.Length && line[i + 1] == '"')
            {
                field.Append('"');
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else if (c != '\r')
            {
                field.Append(c);
            }
        }

        fields.Add(field.ToString());
        return fields;
    }
}
