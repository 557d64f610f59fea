using DuckDB.NET.Data;
using ScreenStats.Warehouse.Tests.Programs;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>A DuckDB file in the program's folder.</summary>
internal sealed class DuckDbRoad : IRoad
{
    public void Lay(SmallProgram program, string folder)
    {
        using (var connection = new DuckDBConnection($"DataSource={Path.Combine(folder, "extract.duckdb")}"))
        {
            connection.Open();
            Table(connection, "screening", TypedRows.Screening, program.Screening, program.Zone);
            if (program.Confirmatory is not null) Table(connection, "confirmatory", TypedRows.Confirmatory, program.Confirmatory, program.Zone);
        }

        File.WriteAllText(Path.Combine(folder, "program.json"), program.ProgramFile("\"warehouse\": { \"url\": \"duckdb:extract.duckdb\", \"screening\": \"main.screening\"" + (program.Confirmatory is null ? "" : ", \"confirmatory\": \"main.confirmatory\"") + " }"));
        foreach (var (name, text) in program.Files) File.WriteAllText(Path.Combine(folder, name), text);
    }

    /// <summary>Runs one statement.</summary>
    public static void Run(DuckDBConnection connection, string statement)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Statements are written in the tests.
        command.CommandText = statement;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    /// <summary>Makes a table of the rows, and a view of it.</summary>
    public static void Table(DuckDBConnection connection, string name, (string Name, TypedRows.Kind Kind)[] columns, IReadOnlyList<Row> rows, TimeZoneInfo? zone)
    {
        Run(connection, $"CREATE TABLE {name}_rows ({string.Join(", ", columns.Select(column => $"\"{column.Name}\" {TypedRows.Sql(column.Kind, duck: true)}"))})");
        long number = 0;
        foreach (var some in rows.Chunk(500))
        {
            Run(connection, $"INSERT INTO {name}_rows VALUES " + string.Join(", ", some.Select(row => "(" + string.Join(", ", columns.Select(column => Literal(TypedRows.Value(row, number, column.Name, column.Kind, zone), column.Kind))) + Next())));
        }

        Run(connection, $"CREATE VIEW {name} AS SELECT * FROM {name}_rows");

        string Next()
        {
            number++;
            return ")";
        }
    }

    private static string Literal(string? text, TypedRows.Kind kind) => text is null ? "NULL" : $"'{text.Replace("'", "''", StringComparison.Ordinal)}'::{TypedRows.Sql(kind, duck: true)}";
}
