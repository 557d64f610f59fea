using System.Globalization;
using Npgsql;

namespace ScreenStats.Warehouse.Tests.Servers;

/// <summary>One running server.</summary>
/// <param name="Data">Its folder.</param>
/// <param name="Port">Its port on the loopback.</param>
/// <param name="Password">Of every role.</param>
public sealed record PostgreSqlServer(string Data, int Port, string Password)
{
    /// <summary>What stands behind it; empty for one that stands alone.</summary>
    public IReadOnlyList<PostgreSqlServer> Shards { get; init; } = [];

    /// <summary>Where a program file finds it.</summary>
    public string Url => string.Create(CultureInfo.InvariantCulture, $"postgresql://127.0.0.1:{Port}/{PostgreSqlServers.Database}");

    /// <summary>A connection of whoever owns the server.</summary>
    public NpgsqlConnection Open(string database = PostgreSqlServers.Database)
    {
        var connection = new NpgsqlConnection(string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={Port};Database={database};Username=postgres;Password={Password};Pooling=false;SSL Mode=Disable"));
        connection.Open();
        return connection;
    }

    /// <summary>Runs one statement.</summary>
    public void Run(string statement, string database = PostgreSqlServers.Database)
    {
        using var connection = Open(database);
        Run(connection, statement);
    }

    /// <summary>Runs one statement.</summary>
    public static void Run(NpgsqlConnection connection, string statement)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Statements are written in the tests.
        command.CommandText = statement;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
