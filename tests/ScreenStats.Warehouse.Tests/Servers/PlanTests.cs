using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Engines;
using ScreenStats.Warehouse.Sql;
using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Roads;

namespace ScreenStats.Warehouse.Tests.Servers;

/// <summary>What the plans of a sharded server say: the grouping happens on every shard, and a plan without it is told.</summary>
[Collection(nameof(WarehouseRoadsTests))]
public sealed class PlanTests : IDisposable
{
    private readonly PostgreSqlServers servers;
    private readonly string folder = Directory.CreateTempSubdirectory("screenstats-plans-").FullName;

    public PlanTests(PostgreSqlServers servers)
    {
        Assert.SkipWhen(PostgreSqlServers.Missing is not null, PostgreSqlServers.Missing ?? "");
        this.servers = servers;
        servers.LetIn();
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Every_shard_groups_by_itself()
    {
        var road = new PostgreSqlRoad(servers.Coordinator);
        road.Lay(SamplePrograms.Marrowlight(), folder);
        using var engine = PostgresEngine.Open(new WarehouseSettings { Url = servers.Coordinator.Url, TimeoutSeconds = 60 }, TestContext.Current.CancellationToken);
        var name = $"{road.Schema}.screening";
        engine.IsSharded(name).Should().BeTrue();
        var sql = new ScreeningSql(new View(ExportKind.Screening, name, engine.Columns(name), bucketNeeded: true), engine.Dialect, sharded: true);
        var week = Dialect.Week("collected_on");
        Statement[] grouped =
        [
            sql.Entries(), sql.PeopleInSeveralBuckets(), sql.Days(), sql.SeveralOnOneDay(), sql.Minutes(), sql.Gaps([]), sql.Gaps(["nobody"]), sql.Totals(["person LIKE '%@%'"]),
            sql.Counts("", ["site", "lot", Dialect.Day("collected_on"), "result"]), sql.Counts("", ["site", "kit"], $"kit <> '' AND {engine.Dialect.IsLess("collected_at", "read_at", 900)}"),
            sql.People("", []), sql.People("", ["site"]), sql.People("", [sql.Lot]), sql.People("", ["site", week]), sql.People("", [Dialect.Month("collected_on", 9000, 9100)]),
            sql.Strata("CASE WHEN site = ANY($1) THEN 1 ELSE 0 END", [new[] { "a" }, new[] { "nobody" }]),
        ];
        foreach (var statement in grouped)
        {
            var onShards = 0;
            engine.Read(statement with { Text = "EXPLAIN (VERBOSE, COSTS OFF) " + statement.Text }, line => onShards += line.Text(0)!.Contains("Relations: Aggregate on", StringComparison.Ordinal) ? 1 : 0);
            onShards.Should().Be(PostgreSqlServers.Shards, "each shard groups: {0}", statement.Text);
            engine.WhyNotPushed(statement).Should().BeNull();
        }
    }

    [Fact]
    public void A_plan_that_moves_rows_is_told_and_counts_the_same()
    {
        var program = SmallPrograms.All.Single(program => program.Name == "cases-and-episodes");
        var road = new PostgreSqlRoad(servers.Coordinator);
        road.Lay(program, folder);
        var columns = string.Join(", ", TypedRows.Screening.Select(column => column.Name == "bucket" ? "bucket + 0 AS bucket" : $"\"{column.Name}\""));
        servers.Coordinator.Run($"DROP VIEW {road.Schema}.screening; CREATE VIEW {road.Schema}.screening AS SELECT {columns} FROM {road.Schema}.screening_rows; GRANT SELECT ON {road.Schema}.screening TO {PostgreSqlServers.Reader}");
        var reading = ScreeningProgram.Open(folder).Read();
        reading.Diagnostics.Should().Contain(one => one.Code == WarehouseDiagnostics.NotPushed);
        reading.Tally.Cells.Screens.Sum(cell => cell.Runs).Should().BePositive();
    }
}
