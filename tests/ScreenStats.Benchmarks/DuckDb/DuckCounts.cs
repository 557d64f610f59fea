using System.Globalization;
using DuckDB.NET.Data;

namespace ScreenStats.Benchmarks.DuckDb;

/// <summary>
/// What a general engine needs for the counts and links alone: the export as typed columns, runs by site, lot, day and outcome, by operator,
/// positives with their first conclusive specimen, sums over people by site and week, days between runs, screen_ids met twice. No rule beyond
/// these, no check, no message, no report.
/// </summary>
internal static class DuckCounts
{
    private static readonly string[] Questions =
    [
        "SELECT site, lot, CAST(collected_at AS DATE), result, specimen, collection, count(*) FROM s GROUP BY ALL",
        "SELECT operator, site, CAST(collected_at AS DATE), result, count(*) FROM s GROUP BY ALL",
        """
        SELECT d.site, d.lot, d.result, f.first.result, count(*)
        FROM (SELECT rowid AS run, person, site, lot, result, collected_at FROM s WHERE result IN ('positive', 'inconclusive')) d
        LEFT JOIN (
            SELECT d.rowid AS run, arg_min({'result': c.result, 'at': c.collected_at}, c.collected_at) AS first
            FROM s d JOIN c ON c.person = d.person AND c.collected_at BETWEEN d.collected_at - INTERVAL 2 HOUR AND d.collected_at + INTERVAL 72 HOUR
            WHERE d.result IN ('positive', 'inconclusive') AND c.result IN ('positive', 'negative')
            GROUP BY d.rowid) f ON f.run = d.run
        GROUP BY ALL
        """,
        """
        SELECT site, week, count(*), sum(n), sum(x), sum(n * n), sum(n * x)
        FROM (SELECT person, site, date_trunc('week', collected_at) AS week, count(*) AS n, count(*) FILTER (result = 'positive') AS x FROM s GROUP BY ALL)
        GROUP BY ALL
        """,
        "SELECT count(*), sum(n), sum(x), sum(n * n), sum(n * x) FROM (SELECT person, count(*) AS n, count(*) FILTER (result = 'positive') AS x FROM s GROUP BY ALL)",
        """
        SELECT site, days, count(*)
        FROM (SELECT site, date_diff('day', lag(collected_at) OVER (PARTITION BY person ORDER BY collected_at), collected_at) AS days FROM s)
        GROUP BY ALL
        """,
        "SELECT count(*) FROM (SELECT screen_id FROM s GROUP BY screen_id HAVING count(*) > 1)",
    ];

    public static int Run(string folder, int threads)
    {
        using var connection = new DuckDBConnection("DataSource=:memory:");
        connection.Open();
        Do(connection, $"SET threads = {threads.ToString(CultureInfo.InvariantCulture)}");
        Do(connection, $"SET temp_directory = '{Path.Combine(Path.GetTempPath(), "screenstats-duck")}'");
        Load(connection, "s", Path.Combine(folder, "screening.csv"), ["screen_id", "person", "site", "collected_at", "result", "lot", "kit", "operator", "specimen", "collection"]);
        Load(connection, "c", Path.Combine(folder, "confirmatory.csv"), ["person", "collected_at", "result", "reported_at", "reason"]);
        var rows = Questions.Sum(question => Rows(connection, question));
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Version(connection)}: {rows} rows of counts"));
        return 0;
    }

    private static void Load(DuckDBConnection connection, string table, string file, string[] columns)
    {
        var heading = File.ReadLines(file).First().Split(',');
        var types = string.Join(", ", heading.Select(name => $"'{name}': '{(name.EndsWith("_at", StringComparison.Ordinal) ? "TIMESTAMP" : "VARCHAR")}'"));
        Do(connection, $"CREATE TEMP TABLE {table} AS SELECT {string.Join(", ", columns.Where(heading.Contains))} FROM read_csv('{file.Replace("'", "''", StringComparison.Ordinal)}', header = true, columns = {{{types}}})");
    }

    private static long Rows(DuckDBConnection connection, string question)
    {
        using var command = connection.CreateCommand();
        command.CommandText = question;
        using var reader = command.ExecuteReader();
        var rows = 0L;
        while (reader.Read()) rows++;
        return rows;
    }

    private static object? Version(DuckDBConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT 'DuckDB ' || version()";
        return command.ExecuteScalar();
    }

    private static void Do(DuckDBConnection connection, string statement)
    {
        using var command = connection.CreateCommand();
        command.CommandText = statement;
        command.ExecuteNonQuery();
    }
}
