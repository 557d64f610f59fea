using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.Tests.Formats;

/// <summary>Rows have numbers of 32 bits: more of them than that are refused, with what to do, and never counted with a wrong number.</summary>
public class MostRowsTests
{
    private const string Advice = "rows, which is as many as can be told apart. Split it by sites or by time, and evaluate the parts.";

    [Fact]
    public void As_many_rows_as_can_have_a_number_are_read_and_one_more_is_refused()
    {
        using var folder = Folder(1200, 1200);

        folder.Read(options: With(2400)).Tally.Cells.Screens.Sum(cell => cell.Runs).Should().Be(2400);
        Refusal(() => folder.Read(options: With(2399))).Should().Be($"Up to screening-2.csv the export has more than 2,399 {Advice}");
        Refusal(() => folder.Read(options: With(1199))).Should().Be($"Up to screening-1.csv the export has more than 1,199 {Advice}");
    }

    [Fact]
    public void Rows_of_files_that_a_cache_knows_are_numbered_too()
    {
        using var folder = Folder(1200, 1200);
        using var cache = new TestFolder();
        folder.Read(options: With(2400) with { Cache = cache.Path });

        Refusal(() => folder.Read(options: With(2399) with { Cache = cache.Path })).Should().Be($"Up to screening-2.csv the export has more than 2,399 {Advice}");
    }

    [Fact]
    public void Without_a_word_the_numbers_are_all_of_32_bits() => new ReadOptions().MostRows.Should().Be(4_294_967_295);

    private static ReadOptions With(uint most) => new() { Threads = 2, MostRows = most };

    private static TestFolder Folder(int first, int second) => new TestFolder().With("screening-1.csv", Rows("a", first)).With("screening-2.csv", Rows("b", second));

    private static string Rows(string people, int count) =>
        TestFolder.Headings + string.Concat(Enumerable.Range(0, count).Select(i => $"{people}{i},North,2026-01-05,neg\n"));

    private static string Refusal(Action read)
    {
        var refused = read.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Subject;
        refused.Code.Should().Be(ReadingDiagnostics.TooManyRows);
        return refused.Message;
    }
}
