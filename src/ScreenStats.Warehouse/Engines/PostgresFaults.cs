using System.Text.RegularExpressions;
using Npgsql;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Warehouse.Engines;

/// <summary>What errors of PostgreSQL mean. Their own texts may quote values, so only their codes, and names of servers, are passed on.</summary>
internal static partial class PostgresFaults
{
    public static WarehouseException? OfOpening(Exception failure, string where) => failure is not PostgresException server ? null : server.SqlState switch
    {
        PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification => new(WarehouseDiagnostics.Unreachable,
            $"The database {where} does not let this user in. Check PGUSER, and PGPASSWORD or the password file (PGPASSFILE), in the environment."),
        PostgresErrorCodes.InvalidCatalogName => new(WarehouseDiagnostics.Unreachable, $"There is no database {where}. Check its name in the url in the program file."),
        _ => new(WarehouseDiagnostics.Unreachable, $"The database {where} refuses the connection (SQLSTATE {server.SqlState}). See that it runs and has connections to spare, and run the same command again.", again: true),
    };

    public static WarehouseException? OfReading(Exception failure, string where, string what) => failure switch
    {
        PostgresException server => OfServer(server, where, what),
        NpgsqlException { InnerException: TimeoutException } => TooLong(where, what),
        NpgsqlException or IOException or System.Net.Sockets.SocketException => new(WarehouseDiagnostics.Interrupted,
            $"The connection to {where} broke while {what} were read. Nothing was written. See that the server runs, and run the same command again.", again: true),
        _ => null,
    };

    private static WarehouseException OfServer(PostgresException server, string where, string what)
    {
        var code = server.SqlState;
        if (code == PostgresErrorCodes.QueryCanceled) return TooLong(where, what);
        if (code == PostgresErrorCodes.InsufficientPrivilege)
            return new(WarehouseDiagnostics.WrongView, $"The user may not read what {what} need at {where}. Grant SELECT on the views, and a user mapping on every shard.");
        if (code.StartsWith("08", StringComparison.Ordinal) || code.StartsWith("57P", StringComparison.Ordinal) || code.StartsWith("HV", StringComparison.Ordinal))
        {
            var shard = ServerName().Match(server.MessageText + " " + server.Where) is { Success: true } named ? $"the shard \"{named.Groups[1].Value}\" behind {where}" : $"{where}, or a shard behind it,";
            return new(WarehouseDiagnostics.Interrupted, $"While {what} were read, {shard} stopped or could not be reached (SQLSTATE {code}). Nothing was written. See that all servers run, and run the same command again.", again: true);
        }

        if (code is "XX000" or "40001" or "40P01" or "55P03" || code.StartsWith("53", StringComparison.Ordinal))
            return new(WarehouseDiagnostics.Interrupted, $"{where} could not finish {what} (SQLSTATE {code}). Nothing was written. See that all servers run and have memory and disk to spare, and run the same command again.", again: true);
        return new(WarehouseDiagnostics.WrongView, $"{where} cannot answer for {what} (SQLSTATE {code}). Look at the views: a value in them cannot be computed or has a type other than agreed.");
    }

    private static WarehouseException TooLong(string where, string what) => new(WarehouseDiagnostics.TimedOut,
        $"Reading {what} from {where} took longer than timeoutSeconds in the program file allows. Nothing was written. State more seconds under warehouse, or run it when the server is idle.");

    [GeneratedRegex("server \"([A-Za-z0-9_]{1,63})\"")]
    private static partial Regex ServerName();
}
