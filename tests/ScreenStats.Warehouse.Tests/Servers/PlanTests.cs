using System.Globalization;
using System.Text.RegularExpressions;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Reporting.Files;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Engines;
using ScreenStats.Warehouse.Sql;
using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Roads;

namespace ScreenStats.Warehouse.Tests.Servers;

/// <summary>What the plans of a sharded server say: the grouping happens on every shard, and a plan without it is told.</summary>
[Collection(nameof(WarehouseRoadsTests))]
public sealed partial class PlanTests : IDisposable
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
        // The first two of the sample: of days without rows planners rather fetch those rows.
        (int, int)[] weeks = [(9039, 9046), (9046, 9053)];
        Statement[] grouped =
        [
            sql.Entries(), sql.PeopleInSeveralBuckets(), sql.Days(), sql.SeveralOnOneDay(), sql.Minutes(), sql.Gaps([]), sql.Gaps(["nobody"]), sql.Totals(["person LIKE '%@%'"]),
            sql.Counts("", ["site", "lot", Dialect.Day("collected_on"), "result"]), sql.Counts("", ["site", "kit"], $"kit <> '' AND {engine.Dialect.IsLess("collected_at", "read_at", 900)}"),
            sql.People("", []), sql.People("", ["site"]), sql.People("", [sql.Lot]), sql.People("", ["site", week]), sql.People("", [Dialect.Month("collected_on", 9000, 9100)]),
            sql.PeopleNotNegative("", ["site", week]), sql.PeopleByTime("", weeks, bySite: false), sql.PeopleByTime("", weeks, bySite: true), sql.SharedIdHashes(),
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
    public void Sums_over_people_by_week_move_a_line_a_person_and_identifiers_a_few_lines_a_bucket()
    {
        var program = SamplePrograms.Marrowlight();
        var road = new PostgreSqlRoad(servers.Coordinator);
        road.Lay(program, folder);
        using var engine = PostgresEngine.Open(new WarehouseSettings { Url = servers.Coordinator.Url, TimeoutSeconds = 60 }, TestContext.Current.CancellationToken);
        var name = $"{road.Schema}.screening";
        var sql = new ScreeningSql(new View(ExportKind.Screening, name, engine.Columns(name), bucketNeeded: true), engine.Dialect, sharded: true);
        var days = new SortedSet<int>();
        engine.Read(sql.Days(), line => days.Add((int)line.Whole(1)));
        var weeks = Enumerable.Range(0, ((days.Max - days.Min) / 7) + 1).Select(week => (days.Min + (7 * week), days.Min + (7 * week) + 7)).ToList();
        var people = program.Screening.Select(row => row["person"]).Where(person => person.Length > 0).Distinct().Count();

        Moved(sql.PeopleByTime("", weeks, bySite: false)).Should().BeInRange(people * 9 / 10, people);
        Moved(sql.PeopleByTime("", weeks, bySite: true)).Should().BeInRange(people * 9 / 10, people * 3 / 2);
        Moved(sql.PeopleNotNegative("", [Dialect.Week("collected_on")])).Should().BeInRange(1, program.Screening.Count / 10);
        Moved(sql.SharedIdHashes()).Should().BeInRange(1, 256 * TypedRows.Buckets);

        int Moved(Statement statement)
        {
            var lines = 0;
            engine.Read(statement with { Text = "EXPLAIN (ANALYZE, TIMING OFF, COSTS OFF) " + statement.Text }, line =>
            {
                if (ForeignLines().Match(line.Text(0)!) is { Success: true } scan) lines += int.Parse(scan.Groups[1].Value, CultureInfo.InvariantCulture);
            });
            return lines;
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
        var opened = ScreeningProgram.Open(folder);
        var settings = opened.Settings with { Title = program.Name };
        var reading = opened.With(settings).Read();
        reading.Diagnostics.Should().Contain(one => one.Code == WarehouseDiagnostics.NotPushed);
        reading.Tally.Evaluate(settings).Tables.ToDictionary(table => table.Id, CsvText.Of).Should().BeEquivalentTo(FileTables.Of(program));
    }

    [GeneratedRegex(@"Foreign Scan.*actual rows=(\d+)")]
    private static partial Regex ForeignLines();
}
