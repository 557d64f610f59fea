using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Warehouse.Tests.Programs;
using ScreenStats.Warehouse.Tests.Roads;

namespace ScreenStats.Warehouse.Tests;

/// <summary>The same rows as CSV and as Parquet give the same tables, byte for byte.</summary>
public class FileRoadsTests
{
    public static TheoryData<string> Names => [.. SmallPrograms.All.Select(program => program.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_small_program_gives_the_same_tables_as_CSV_and_as_Parquet(string name)
    {
        var program = SmallPrograms.All.Single(one => one.Name == name);
        var (cells, csv) = Way.Through(new CsvRoad(), program);
        var (others, parquet) = Way.Through(new ParquetRoad(), program);
        Way.Differences(csv, parquet).Should().BeEmpty();
        others.Should().BeEquivalentTo(cells, options => options.Excluding(one => one.Diagnostics));
        csv.Should().ContainKey("ledger").And.ContainKey("lots").And.ContainKey("follow-up");
    }

    [Fact]
    public void Every_small_program_has_its_own_name() => SmallPrograms.All.Select(program => program.Name).Should().OnlyHaveUniqueItems();

    [Fact]
    public void Drawn_programs_give_the_same_tally_as_CSV_and_as_Parquet() => DrawnRows.Program.Sample(program =>
    {
        var csv = Tally(new CsvRoad(), program);
        var parquet = Tally(new ParquetRoad(), program);
        parquet.Should().BeEquivalentTo(csv);
    }, iter: 60, threads: 1);

    /// <summary>The cubes; where the program cannot be used, why.</summary>
    private static (TallyCells? Cells, string Why) Tally(IRoad road, SmallProgram program)
    {
        var folder = Directory.CreateTempSubdirectory("screenstats-road-").FullName;
        try
        {
            road.Lay(program, folder);
            return (ScreeningProgram.Open(folder).Read().Tally.Cells with { Diagnostics = [] }, "");
        }
        catch (UnusableDataException refusal)
        {
            return (null, string.Join(", ", refusal.Diagnostics.Select(one => one.Code)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
