using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Roads;

namespace ScreenStats.Warehouse.Tests.Servers;

public class DuckDbParquetTests
{
    [Theory]
    [InlineData("")]
    [InlineData(", PARQUET_VERSION v2, COMPRESSION zstd, ROW_GROUP_SIZE 2048")]
    public void Parquet_that_DuckDB_writes_gives_the_tables_of_CSV(string options)
    {
        var programs = SmallPrograms.All.Where(DuckDbParquetRoad.Takes).ToList();
        programs.Should().HaveCountGreaterThan(25);
        var road = new DuckDbParquetRoad(options);
        programs.SelectMany(program => Way.Differences(FileTables.Of(program), Way.Through(road, program).Tables).Select(one => $"{program.Name}: {one}")).Should().BeEmpty();
    }
}
