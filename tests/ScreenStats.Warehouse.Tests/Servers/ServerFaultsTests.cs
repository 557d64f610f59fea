using System.Globalization;
using Npgsql;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Roads;

namespace ScreenStats.Warehouse.Tests.Servers;

/// <summary>What fails gives one clear message that holds no password, and the same command succeeds once it is mended.</summary>
[Collection(nameof(WarehouseRoadsTests))]
public sealed class ServerFaultsTests : IDisposable
{
    private static readonly SmallProgram Program = SmallPrograms.All.Single(program => program.Name == "cases-and-episodes");
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly PostgreSqlServers servers;
    private readonly string folder = Directory.CreateTempSubdirectory("screenstats-faults-").FullName;

    public ServerFaultsTests(PostgreSqlServers servers)
    {
        Assert.SkipWhen(PostgreSqlServers.Missing is not null, PostgreSqlServers.Missing ?? "");
        this.servers = servers;
        servers.LetIn();
    }

    public void Dispose()
    {
        servers.LetIn();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_wrong_password_is_told_and_never_printed()
    {
        Lay(servers.Alone);
        servers.LetIn("quite-another-word");
        var refused = Refused();
        refused.Code.Should().Be(WarehouseDiagnostics.Unreachable);
        refused.Message.Should().Contain("PGPASSWORD").And.NotContain("quite-another-word").And.NotContain(servers.Password);
        servers.LetIn();
        Succeeds();
    }

    [Fact]
    public void A_server_that_does_not_run_is_told()
    {
        Lay(servers.Alone);
        servers.Stop(servers.Alone);
        try
        {
            var refused = Refused();
            refused.Code.Should().Be(WarehouseDiagnostics.Unreachable);
            refused.Message.Should().Contain(string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{servers.Alone.Port}")).And.NotContain(servers.Password);
        }
        finally
        {
            servers.Start(servers.Alone);
        }

        Succeeds();
    }

    [Fact]
    public void A_view_that_is_missing_is_named()
    {
        var road = Lay(servers.Alone);
        servers.Alone.Run($"ALTER VIEW {road.Schema}.screening RENAME TO elsewhere");
        var refused = Refused();
        refused.Code.Should().Be(WarehouseDiagnostics.WrongView);
        refused.Message.Should().Contain($"{road.Schema}.screening");
        servers.Alone.Run($"ALTER VIEW {road.Schema}.elsewhere RENAME TO screening");
        Succeeds();
    }

    [Theory]
    [InlineData("result", "RENAME COLUMN result TO outcome", "RENAME COLUMN outcome TO result")]
    [InlineData("collected_on", "RENAME COLUMN collected_on TO day", "RENAME COLUMN day TO collected_on")]
    public void A_column_that_is_missing_is_named(string column, string spoil, string mend)
    {
        var road = Lay(servers.Alone);
        servers.Alone.Run($"ALTER VIEW {road.Schema}.screening {spoil}");
        var refused = Refused();
        refused.Code.Should().Be(WarehouseDiagnostics.WrongView);
        refused.Message.Should().Contain(column);
        servers.Alone.Run($"ALTER VIEW {road.Schema}.screening {mend}");
        Succeeds();
    }

    [Fact]
    public void A_view_that_may_not_be_read_is_told()
    {
        var road = Lay(servers.Alone);
        servers.Alone.Run($"REVOKE SELECT ON {road.Schema}.screening FROM {PostgreSqlServers.Reader}");
        Refused().Code.Should().Be(WarehouseDiagnostics.WrongView);
        servers.Alone.Run($"GRANT SELECT ON {road.Schema}.screening TO {PostgreSqlServers.Reader}");
        Succeeds();
    }

    [Fact]
    public async Task A_query_that_takes_longer_than_stated_is_given_up()
    {
        var road = Lay(servers.Alone, seconds: 1);
        await using (await Locked(servers.Alone, road))
        {
            // Nobody lets go of the lock, so the time alone can end it.
            Refused().Code.Should().Be(WarehouseDiagnostics.TimedOut);
        }

        Succeeds();
    }

    [Fact]
    public async Task A_connection_that_is_dropped_again_and_again_is_told()
    {
        var road = Lay(servers.Alone);
        await using (await Locked(servers.Alone, road))
        {
            var reading = Task.Run(Refused, TestContext.Current.CancellationToken);
            while (!reading.IsCompleted) await Drop(servers.Alone);
            (await reading).Code.Should().BeOneOf(WarehouseDiagnostics.Interrupted, WarehouseDiagnostics.Unreachable);
        }

        Succeeds();
    }

    [Fact]
    public async Task A_connection_that_is_dropped_once_is_made_again()
    {
        var road = Lay(servers.Alone);
        var held = await Locked(servers.Alone, road);
        var reading = Task.Run(Succeeds, TestContext.Current.CancellationToken);
        var dropped = false;
        while (!dropped && !reading.IsCompleted) dropped = await Drop(servers.Alone);
        await held.DisposeAsync();
        await reading;
        dropped.Should().BeTrue();
    }

    [Fact]
    public async Task A_shard_that_stops_in_the_middle_of_a_query_is_told()
    {
        var road = Lay(servers.Coordinator);
        var shard = servers.Coordinator.Shards[1];
        await using (await Locked(shard, road))
        {
            var reading = Task.Run(Refused, TestContext.Current.CancellationToken);
            await Waiting(shard, reading);
            servers.Stop(shard);
            try
            {
                var refused = await reading;
                refused.Code.Should().Be(WarehouseDiagnostics.Interrupted);
                refused.Message.Should().Contain("shard").And.Contain("run the same command again").And.NotContain(servers.Password);
            }
            finally
            {
                servers.Start(shard);
            }
        }

        Succeeds();
    }

    [Fact]
    public void A_person_with_two_buckets_is_told()
    {
        var road = Lay(servers.Coordinator);
        var moved = $"UPDATE {road.Schema}.screening_rows r SET bucket = bucket {{0}} 1000 WHERE row_number = (SELECT max(row_number) FROM {road.Schema}.screening_rows WHERE person IN (SELECT person FROM {road.Schema}.screening_rows GROUP BY person HAVING count(*) > 1))";
        foreach (var shard in servers.Coordinator.Shards) shard.Run(moved.Replace("{0}", "+", StringComparison.Ordinal));
        var refused = Refused();
        refused.Code.Should().Be(WarehouseDiagnostics.WrongBuckets);
        refused.Message.Should().Contain("more than one bucket");
        foreach (var shard in servers.Coordinator.Shards) shard.Run(moved.Replace("{0}", "-", StringComparison.Ordinal));
        Succeeds();
    }

    private PostgreSqlRoad Lay(PostgreSqlServer server, int seconds = 60)
    {
        var road = new PostgreSqlRoad(server) { Seconds = seconds };
        road.Lay(Program, folder);
        return road;
    }

    private Diagnostic Refused()
    {
        var read = () => ScreeningProgram.Open(folder).Read();
        var diagnostics = read.Should().Throw<UnusableDataException>().Which.Diagnostics;
        return diagnostics.Where(one => one.Severity == Severity.Error).Should().ContainSingle().Which;
    }

    private void Succeeds()
    {
        var opened = ScreeningProgram.Open(folder);
        var settings = opened.Settings with { Title = Program.Name };
        var tables = opened.With(settings).Read().Tally.Evaluate(settings).Tables.ToDictionary(table => table.Id, Reporting.Files.CsvText.Of);
        tables.Should().BeEquivalentTo(FileTables.Of(Program));
    }

    /// <summary>Holds the rows so that whoever reads them waits, until it is disposed of.</summary>
    private static async Task<NpgsqlConnection> Locked(PostgreSqlServer server, PostgreSqlRoad road)
    {
        var connection = server.Open();
        PostgreSqlServer.Run(connection, $"BEGIN; LOCK TABLE {road.Schema}.screening_rows IN ACCESS EXCLUSIVE MODE");
        await Task.Yield();
        return connection;
    }

    private static async Task Waiting(PostgreSqlServer server, Task reading)
    {
        using var watch = server.Open("postgres");
        for (var until = DateTime.UtcNow + Patience; DateTime.UtcNow < until && !reading.IsCompleted;)
        {
            await using var command = new NpgsqlCommand("SELECT count(*) FROM pg_stat_activity WHERE wait_event_type = 'Lock'", watch);
            if ((long)(await command.ExecuteScalarAsync())! > 0) return;
            await Task.Delay(20);
        }

        throw new InvalidOperationException("Nobody waited for the rows.");
    }

    /// <summary>Ends the connection of whoever waits for the rows; whether there was one.</summary>
    private static async Task<bool> Drop(PostgreSqlServer server)
    {
        using var watch = server.Open("postgres");
        await using var command = new NpgsqlCommand("SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE wait_event_type = 'Lock'", watch);
        var ended = (long)(await command.ExecuteScalarAsync())!;
        if (ended == 0) await Task.Delay(20);
        return ended > 0;
    }
}
