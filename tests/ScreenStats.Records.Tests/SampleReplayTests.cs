using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Replay;
using ScreenStats.Records.Tests.PersonLog;
using ScreenStats.Testing;

namespace ScreenStats.Records.Tests;

/// <summary>One reading of the sample program taken back to a day, against a reading of its files cut off by hand at that day.</summary>
public class SampleReplayTests
{
    private static readonly string Folder = RepositoryRoot.Combine("sample-data", "marrowlight");
    private static readonly ProgramSettings Settings = ProgramFile.Parse(File.ReadAllText(Path.Combine(Folder, "program.json")));
    private static readonly Lazy<Tally> Whole = new(() => new ProgramReader().Read(Settings, Folder).Tally);

    [Theory]
    [InlineData("2024-10-02")]
    [InlineData("2024-11-14")]
    [InlineData("2024-12-01")]
    [InlineData("2025-01-19")]
    [InlineData("2025-03-28")]
    public void The_sample_program_taken_back_to_a_day_equals_its_files_cut_off_at_that_day(string date)
    {
        var day = DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        using var folder = new TestFolder()
            .With("screening.csv", CutOff("screening.csv", 3, day))
            .With("controls.csv", CutOff("controls.csv", 3, day))
            .With("confirmatory.csv", CutOff("confirmatory.csv", 3, day))
            .With("headcount.csv", File.ReadAllText(Path.Combine(Folder, "headcount.csv")));

        var reading = folder.Read(Settings, new ReadOptions { Threads = 2, AsOf = new StatedMoment(day.ToDateTime(new TimeOnly(23, 59, 59)), null) });

        var then = ReplayTests.Shape(reading.Tally.Cells, day);
        ReplayTests.Text(Whole.Value.AsOf(day)).Should().Be(ReplayTests.Text(then with { Headcount = [.. then.Headcount.Where(cell => cell.Week <= day)] }));
        then.Settlements.Should().NotBeEmpty();
    }

    [Fact]
    public void Every_follow_up_of_the_sample_program_is_known_no_earlier_than_its_run_and_all_are_at_the_end()
    {
        var cells = Whole.Value.Cells;
        cells.Settlements.Should().OnlyContain(cell => cell.Known >= cell.Day);
        var end = Whole.Value.AsOf(DateOnly.MaxValue);
        end.Screens.Should().NotContain(cell => cell.FollowUp == FollowUp.Pending);
        foreach (var settled in new[] { FollowUp.Confirmed, FollowUp.Refuted })
        {
            end.Screens.Where(cell => cell.FollowUp == settled).Should().Equal(cells.Screens.Where(cell => cell.FollowUp == settled));
        }
    }

    // The rows whose date in a column, year to day, is not after the day; rows that have no such date stay: they are set aside.
    private static string CutOff(string file, int column, DateOnly day)
    {
        var lines = File.ReadAllLines(Path.Combine(Folder, file));
        return string.Join('\n', lines.Where((line, at) => at == 0 || !IsAfter(line.Split(',')))) + "\n";

        bool IsAfter(string[] fields) => fields.Length > column && fields[column].Length >= 10
            && DateOnly.TryParseExact(fields[column][..10], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) && date > day;
    }
}
