using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Roads;
#if WAREHOUSE
using ScreenStats.Warehouse.Tests.Servers;
#endif

namespace ScreenStats.Warehouse.Tests;

/// <summary>Where the rows lie in a database, the tables are those of the same rows in files, byte for byte.</summary>
[Collection(nameof(WarehouseRoadsTests))]
#if WAREHOUSE
public class WarehouseRoadsTests(PostgreSqlServers servers)
#else
public class WarehouseRoadsTests
#endif
{
    public static TheoryData<string> Roads => ["DuckDB", "PostgreSQL", "sharded PostgreSQL"];

    [Theory]
    [MemberData(nameof(Roads))]
    public void Every_small_program_gives_the_tables_of_files(string road) => Agree(road, SmallPrograms.All);

    [Theory]
    [MemberData(nameof(Roads))]
    public void Drawn_programs_give_the_tables_of_files(string road) => Agree(road, DrawnRows.Some(12));

    [Theory]
    [MemberData(nameof(Roads))]
    public void The_sample_program_gives_the_tables_of_files(string road) => Agree(road, [SamplePrograms.Marrowlight()]);

    private void Agree(string road, IEnumerable<SmallProgram> programs)
    {
        var different = new List<string>();
        var way = Find(road);
        foreach (var program in programs)
        {
            var expected = FileTables.Of(program);
            try
            {
                different.AddRange(Way.Differences(expected, Way.Through(way, program).Tables).Select(one => $"{program.Name}: {one}"));
            }
            catch (Counting.Diagnostics.UnusableDataException refusal)
            {
                different.Add($"{program.Name}: refused: {string.Join(" ", refusal.Diagnostics.Select(one => one.Message))}");
            }
        }

        different.Should().BeEmpty();
    }

#if WAREHOUSE
    private IRoad Find(string road)
    {
        if (road == "DuckDB") return new DuckDbRoad();
        Assert.SkipWhen(PostgreSqlServers.Missing is not null, PostgreSqlServers.Missing ?? "");
        var server = road == "PostgreSQL" ? servers.Alone : servers.Coordinator;
        servers.LetIn();
        return new PostgreSqlRoad(server);
    }
#else
    private static IRoad Find(string road)
    {
        Assert.Skip($"The road of {road} needs packages that nobody downloads unasked: SCREENSTATS_WAREHOUSE=true dotnet test brings them.");
        return new CsvRoad();
    }
#endif
}
