using System.Globalization;
using Npgsql;
using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Servers;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>A PostgreSQL server, alone or in front of shards: each program in a schema of its own, rows put onto the shards themselves.</summary>
internal sealed class PostgreSqlRoad(PostgreSqlServer server) : IRoad
{
    private static int schemas;

    /// <summary>Seconds that a query may take.</summary>
    public int Seconds { get; init; } = 60;

    /// <summary>The schema of the last program.</summary>
    public string Schema { get; private set; } = "";

    public void Lay(SmallProgram program, string folder)
    {
        Schema = string.Create(CultureInfo.InvariantCulture, $"p{Interlocked.Increment(ref schemas)}");
        using var connection = server.Open();
        PostgreSqlServer.Run(connection, $"CREATE SCHEMA {Schema}");
        foreach (var shard in server.Shards) shard.Run($"CREATE SCHEMA {Schema}");
        Table(connection, "screening", TypedRows.Screening, program.Screening, program.Zone);
        if (program.Confirmatory is not null) Table(connection, "confirmatory", TypedRows.Confirmatory, program.Confirmatory, program.Zone);
        PostgreSqlServer.Run(connection, $"GRANT USAGE ON SCHEMA {Schema} TO {PostgreSqlServers.Reader}; GRANT SELECT ON ALL TABLES IN SCHEMA {Schema} TO {PostgreSqlServers.Reader}");
        foreach (var shard in server.Shards) shard.Run($"GRANT USAGE ON SCHEMA {Schema} TO {PostgreSqlServers.Reader}; GRANT SELECT ON ALL TABLES IN SCHEMA {Schema} TO {PostgreSqlServers.Reader}");
        File.WriteAllText(Path.Combine(folder, "program.json"), program.ProgramFile(Section(program)));
        foreach (var (name, text) in program.Files) File.WriteAllText(Path.Combine(folder, name), text);
    }

    /// <summary>What the program file says of the warehouse.</summary>
    public string Section(SmallProgram program) => $"\"warehouse\": {{ \"url\": \"{server.Url}\", \"screening\": \"{Schema}.screening\""
        + (program.Confirmatory is null ? "" : $", \"confirmatory\": \"{Schema}.confirmatory\"") + string.Create(CultureInfo.InvariantCulture, $", \"timeoutSeconds\": {Seconds} }}");

    private void Table(NpgsqlConnection connection, string name, (string Name, TypedRows.Kind Kind)[] columns, IReadOnlyList<Row> rows, TimeZoneInfo? zone)
    {
        var definition = string.Join(", ", columns.Select(column => $"\"{column.Name}\" {TypedRows.Sql(column.Kind, duck: false)}{(column.Name == "bucket" ? " NOT NULL" : "")}"));
        var table = $"{Schema}.{name}_rows";
        if (server.Shards.Count == 0)
        {
            PostgreSqlServer.Run(connection, $"CREATE TABLE {table} ({definition})");
            Copy(connection, table, columns, rows.Select((row, number) => (row, (long)number)), zone);
            PostgreSqlServer.Run(connection, $"ANALYZE {table}");
        }
        else
        {
            PostgreSqlServer.Run(connection, $"CREATE TABLE {table} ({definition}) PARTITION BY HASH (bucket)");
            var shards = Enumerable.Range(0, server.Shards.Count).Select(shard => Buckets(connection, table, shard)).ToList();
            for (var s = 0; s < shards.Count; s++)
            {
                using var behind = server.Shards[s].Open();
                PostgreSqlServer.Run(behind, $"CREATE TABLE {table} ({definition})");
                var own = shards[s];
                Copy(behind, table, columns, rows.Select((row, number) => (row, (long)number)).Where(one => own.Contains(TypedRows.Bucket(one.row["person"]))), zone);
                PostgreSqlServer.Run(behind, $"ANALYZE {table}");
                PostgreSqlServer.Run(connection, $"CREATE FOREIGN TABLE {table}_{s} PARTITION OF {table} FOR VALUES WITH (MODULUS {shards.Count}, REMAINDER {s}) SERVER shard{s} OPTIONS (schema_name '{Schema}', table_name '{name}_rows')");
            }

            PostgreSqlServer.Run(connection, $"ANALYZE {table}");
        }

        PostgreSqlServer.Run(connection, $"CREATE VIEW {Schema}.{name} AS SELECT {string.Join(", ", columns.Select(column => $"\"{column.Name}\""))} FROM {table}");
    }

    /// <summary>The buckets that a partition holds, by the server's own hash.</summary>
    private HashSet<int> Buckets(NpgsqlConnection connection, string table, int remainder)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Statements are written in the tests.
        command.CommandText = $"SELECT b FROM generate_series(0, {TypedRows.Buckets - 1}) b WHERE satisfies_hash_partition('{table}'::regclass, {server.Shards.Count}, {remainder}, b)";
#pragma warning restore CA2100
        using var reader = command.ExecuteReader();
        var all = new HashSet<int>();
        while (reader.Read()) all.Add(reader.GetInt32(0));
        return all;
    }

    private static void Copy(NpgsqlConnection connection, string table, (string Name, TypedRows.Kind Kind)[] columns, IEnumerable<(Row Row, long Number)> rows, TimeZoneInfo? zone)
    {
        using var writer = connection.BeginTextImport($"COPY {table} FROM STDIN");
        foreach (var (row, number) in rows)
        {
            writer.Write(string.Join('\t', columns.Select(column => TypedRows.Value(row, number, column.Name, column.Kind, zone) is { } text
                ? text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\t", "\\t", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal)
                : "\\N")) + "\n");
        }
    }
}
