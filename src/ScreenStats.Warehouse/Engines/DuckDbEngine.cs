using System.Collections.Immutable;
using System.Data.Common;
using DuckDB.NET.Data;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Formats;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Engines;

/// <summary>A DuckDB file in the program's folder.</summary>
internal sealed class DuckDbEngine : Engine
{
    private readonly DuckDBConnection connection;
    private readonly string name;
    private readonly int timeoutSeconds;
    private readonly string spill;
    private volatile bool late;

    private DuckDbEngine(DuckDBConnection connection, string name, int timeoutSeconds, string spill, CancellationToken cancellation)
        : base(cancellation) => (this.connection, this.name, this.timeoutSeconds, this.spill) = (connection, name, timeoutSeconds, spill);

    public override Dialect Dialect { get; } = new DuckDbDialect();

    protected override string OwnCatalog => " AND table_catalog = current_database()";

    /// <summary>Opens the file without the right to write.</summary>
    /// <exception cref="WarehouseException">It cannot be opened.</exception>
    public static DuckDbEngine Open(WarehouseSettings settings, string folder, int threads, CancellationToken cancellation)
    {
        var stated = settings.Url["duckdb:".Length..];
        var path = Path.Combine(folder, stated);
        var name = Path.GetFileName(stated);
        if (FolderBounds.LeadsOut(stated) || !File.Exists(path) || !new FolderBounds(folder).Holds(path))
        {
            throw new WarehouseException(WarehouseDiagnostics.Unreachable, FolderBounds.LeadsOut(stated) || File.Exists(path)
                ? $"The file {name} of the warehouse lies outside of the program's folder. Put it into the folder, and write \"duckdb:\" and its name there."
                : $"There is no file {name} in the program's folder. Put it there, or correct the url under warehouse in the program file.");
        }

        // What does not fit into memory goes into a folder that only this user can look into.
        var spill = Directory.CreateTempSubdirectory("screenstats-").FullName;
        DuckDBConnection? connection = null;
        try
        {
            connection = new DuckDBConnection($"Data Source={path};ACCESS_MODE=READ_ONLY;threads={Math.Max(1, threads)}");
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = $"SET temp_directory = '{spill.Replace("'", "''", StringComparison.Ordinal)}'; SET TimeZone = 'UTC'; SET preserve_insertion_order = false; BEGIN TRANSACTION";
            command.ExecuteNonQuery();
            return new DuckDbEngine(connection, name, settings.TimeoutSeconds, spill, cancellation);
        }
        catch (Exception failure) when (failure is DbException or InvalidOperationException or ArgumentException)
        {
            connection?.Dispose();
            Directory.Delete(spill, true);
            throw new WarehouseException(WarehouseDiagnostics.Unreachable, $"{name} cannot be opened as a DuckDB file. Check that it is one of a version that is known here, and that no other program is writing it.");
        }
    }

    public override bool IsSharded(string quotedView) => false;

    public override string? WhyNotPushed(Statement statement) => null;

    public override IEnumerable<(string Condition, ImmutableArray<object> Parameters)> OnDays(IReadOnlyList<(string Person, long Day)> days)
    {
        if (days.Count == 0) yield break;
        yield return ($"(person, {Dialect.Day("collected_on")}) IN (SELECT unnest(CAST($1 AS VARCHAR[])), unnest(CAST($2 AS BIGINT[])))",
            [days.Select(one => one.Person).ToArray(), days.Select(one => one.Day).ToArray()]);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (!disposing) return;
        connection.Dispose();
        try
        {
            Directory.Delete(spill, true);
        }
        catch (IOException)
        {
        }
    }

    protected override DbCommand Command(Statement statement)
    {
        var command = connection.CreateCommand();
        command.CommandText = statement.Text;
        foreach (var value in statement.Parameters)
        {
            command.Parameters.Add(new DuckDBParameter(value switch
            {
                string[] texts => texts.ToList(),
                long[] numbers => numbers.ToList(),
                _ => value,
            }));
        }

        return command;
    }

    protected override IDisposable? Limit(DbCommand command)
    {
        late = false;
        return new Timer(_ =>
        {
            late = true;
            command.Cancel();
        }, null, TimeSpan.FromSeconds(timeoutSeconds), Timeout.InfiniteTimeSpan);
    }

    protected override WarehouseException? Explain(Exception failure, Statement statement, bool beforeFirst)
    {
        if (late)
        {
            return new(WarehouseDiagnostics.TimedOut,
                $"Reading {statement.What} from {name} took longer than timeoutSeconds in the program file allows. Nothing was written. State more seconds under warehouse.");
        }

        return failure is DbException or IOException ? new(WarehouseDiagnostics.WrongView,
            $"{name} cannot answer for {statement.What}. Look at the views: a value in them cannot be computed or has a type other than agreed, a file they read is missing, or memory and disk do not suffice.") : null;
    }
}
