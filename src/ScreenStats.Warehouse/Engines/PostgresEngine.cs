using System.Collections.Immutable;
using System.Data;
using System.Data.Common;
using System.Globalization;
using System.Net;
using Npgsql;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Engines;

/// <summary>PostgreSQL, or what speaks its protocol and dialect.</summary>
internal sealed class PostgresEngine : Engine
{
    private const int DaysOfOneQuery = 200_000;
    private const int DefaultPort = 5432;

    private readonly NpgsqlConnection connection;
    private readonly NpgsqlTransaction transaction;
    private readonly string where;

    private PostgresEngine(NpgsqlConnection connection, NpgsqlTransaction transaction, string where, CancellationToken cancellation)
        : base(cancellation) => (this.connection, this.transaction, this.where) = (connection, transaction, where);

    public override Dialect Dialect { get; } = new PostgresDialect();

    /// <summary>Connects, with user and password of the environment, and begins to read.</summary>
    /// <exception cref="WarehouseException">The server cannot be reached or does not let anybody in.</exception>
    public static PostgresEngine Open(WarehouseSettings settings, CancellationToken cancellation)
    {
        var url = new Uri(settings.Url);
        var port = url.Port > 0 ? url.Port : DefaultPort;
        var where = string.Create(CultureInfo.InvariantCulture, $"{url.Host}:{port}/{url.AbsolutePath.Trim('/')}");
        NpgsqlConnection? connection = null;
        try
        {
            connection = new NpgsqlConnection(Connection(url, port, settings.TimeoutSeconds));
            connection.Open();
            using (var command = connection.CreateCommand())
            {
                // Partitions that lie on shards are grouped there; nothing can be written; texts are compared as they are.
                command.CommandText = string.Create(CultureInfo.InvariantCulture,
                    $"SET default_transaction_read_only = on; SET statement_timeout = {settings.TimeoutSeconds * 1000L}; SET TimeZone = 'UTC'; SET enable_partitionwise_aggregate = on; SET enable_partitionwise_join = on; SET jit = off");
                command.ExecuteNonQuery();
            }

            return new PostgresEngine(connection, connection.BeginTransaction(IsolationLevel.RepeatableRead), where, cancellation);
        }
        catch (Exception failure) when (failure is NpgsqlException or InvalidOperationException or ArgumentException or IOException)
        {
            connection?.Dispose();
            throw PostgresFaults.OfOpening(failure, where) ?? new WarehouseException(WarehouseDiagnostics.Unreachable,
                $"The database {where} cannot be reached. Check the url in the program file, that the server runs and lets this machine in, and PGUSER, PGPASSWORD or PGPASSFILE and PGSSLMODE.", again: true);
        }
    }

    public override bool IsSharded(string quotedView)
    {
        var foreign = false;
        Read(new Statement($"EXPLAIN SELECT 1 FROM {quotedView}") { What = "the plan" }, line => foreign |= line.Text(0)!.Contains("Foreign Scan", StringComparison.Ordinal));
        return foreign;
    }

    public override string? WhyNotPushed(Statement statement)
    {
        var (scans, grouped) = (0, 0);
        Read(statement with { Text = "EXPLAIN (VERBOSE, COSTS OFF) " + statement.Text }, line =>
        {
            var text = line.Text(0)!;
            if (text.Contains("Foreign Scan", StringComparison.Ordinal)) scans++;
            if (text.Contains("Relations: Aggregate on", StringComparison.Ordinal)) grouped++;
        });
        return grouped >= scans ? null : string.Create(CultureInfo.InvariantCulture, $"{scans - grouped} of {scans} parts of the plan for {statement.What} send rows, not counts");
    }

    public override IEnumerable<(string Condition, ImmutableArray<object> Parameters)> OnDays(IReadOnlyList<(string Person, long Day)> days)
    {
        // The server's own hash, so that shards need one list of numbers; what else has the same hash is left out when it is read.
        for (var from = 0; from < days.Count; from += DaysOfOneQuery)
        {
            var piece = days.Skip(from).Take(DaysOfOneQuery).ToList();
            var hashes = new List<long>(piece.Count);
            Read(new Statement("SELECT hashtextextended(person, day) FROM unnest($1, $2) AS wanted(person, day)", [piece.Select(one => one.Person).ToArray(), piece.Select(one => one.Day).ToArray()]) { What = "the days to look at" },
                line => hashes.Add(line.Whole(0)));
            yield return ($"hashtextextended(person, CAST({Dialect.Day("collected_on")} AS bigint)) = ANY($1)", [hashes.ToArray()]);
        }
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (!disposing) return;
        // Nothing was written, so nothing is lost where the connection is broken already.
        connection.Dispose();
        transaction.Dispose();
    }

    protected override DbCommand Command(Statement statement)
    {
        var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = statement.Text;
        foreach (var value in statement.Parameters) command.Parameters.Add(new NpgsqlParameter { Value = value });
        return command;
    }

    protected override WarehouseException? Explain(Exception failure, Statement statement, bool beforeFirst) => PostgresFaults.OfReading(failure, where, statement.What);

    // The time of a query is limited on the server, which tells why it stopped; here only where no answer comes at all.
    private static string Connection(Uri url, int port, int timeoutSeconds)
    {
        var builder = new NpgsqlConnectionStringBuilder
        {
            Host = url.Host.Trim('[', ']'),
            Port = port,
            Database = Uri.UnescapeDataString(url.AbsolutePath.Trim('/')),
            ApplicationName = "ScreenStats",
            Pooling = false,
            Timeout = 15,
            KeepAlive = 30,
            CommandTimeout = timeoutSeconds + 30,
            IncludeErrorDetail = false,
            SslMode = Ssl(url.Host),
        };
        return builder.ConnectionString;
    }

    private static SslMode Ssl(string host) => Environment.GetEnvironmentVariable("PGSSLMODE") switch
    {
        "disable" => SslMode.Disable,
        "allow" => SslMode.Allow,
        "prefer" => SslMode.Prefer,
        "require" => SslMode.Require,
        "verify-ca" => SslMode.VerifyCA,
        "verify-full" => SslMode.VerifyFull,
        null or "" => host == "localhost" || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address)) ? SslMode.Prefer : SslMode.VerifyFull,
        _ => throw new WarehouseException(WarehouseDiagnostics.Unreachable, "PGSSLMODE in the environment is none of disable, allow, prefer, require, verify-ca and verify-full. Correct it, or remove it."),
    };
}
