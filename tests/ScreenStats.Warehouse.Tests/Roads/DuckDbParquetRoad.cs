using DuckDB.NET.Data;
using ScreenStats.Warehouse.Tests.Programs;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>Parquet as another library than ours writes it: times as instants, dates, truths and text.</summary>
/// <param name="options">How it is written.</param>
internal sealed class DuckDbParquetRoad(string options) : IRoad
{
    /// <summary>Whether each column of times of a program holds either times or dates, as a typed column must, and there is a zone to read instants in.</summary>
    public static bool Takes(SmallProgram program) => program.Zone is not null
        && Alike(program.Screening, "collected_at") && Alike(program.Confirmatory ?? [], "collected_at") && Alike(program.Confirmatory ?? [], "reported_at");

    public void Lay(SmallProgram program, string folder)
    {
        using var connection = new DuckDBConnection("DataSource=:memory:");
        connection.Open();
        Write(connection, folder, "screening", TypedRows.Screening, program.Screening, program.Zone);
        if (program.Confirmatory is not null) Write(connection, folder, "confirmatory", TypedRows.Confirmatory, program.Confirmatory, program.Zone);
        File.WriteAllText(Path.Combine(folder, "program.json"), program.ProgramFile());
        foreach (var (name, text) in program.Files) File.WriteAllText(Path.Combine(folder, name), text);
    }

    private static bool Alike(IReadOnlyList<Row> rows, string column) =>
        rows.Select(row => WrittenTime.Of(row[column])).Where(time => time is not null).Select(time => time!.Value.DateOnly).Distinct().Count() < 2;

    private void Write(DuckDBConnection connection, string folder, string name, (string Name, TypedRows.Kind Kind)[] columns, IReadOnlyList<Row> rows, TimeZoneInfo? zone)
    {
        DuckDbRoad.Table(connection, name, columns, rows, zone);
        var written = columns.Where(column => column.Name is not ("bucket" or "row_number" or "collected_on" or "reported_on")).Select(column => column.Name switch
        {
            "collected_at" or "reported_at" when rows.Any(row => WrittenTime.Of(row[column.Name]) is { DateOnly: true }) => $"{column.Name[..^2]}on AS {column.Name}",
            _ => column.Name,
        });
        DuckDbRoad.Run(connection, $"COPY (SELECT {string.Join(", ", written)} FROM {name}_rows ORDER BY row_number) TO '{Path.Combine(folder, name + ".parquet")}' (FORMAT parquet{options})");
    }
}
