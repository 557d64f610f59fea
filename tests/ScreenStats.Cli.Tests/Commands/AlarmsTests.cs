using System.Globalization;
using System.Text.Json;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class AlarmsTests : IDisposable
{
    private static readonly string Sample = RepositoryRoot.Combine("sample-data", "marrowlight");
    private readonly string folder = Directory.CreateTempSubdirectory("alarms").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void What_a_nightly_job_prints()
    {
        var run = Runner.Of("alarms", Sample, "--as-of", "2024-11-21");

        run.Code.Should().Be(0, run.Errors);
        Golden.Check("cli/alarms.txt", run.Output);
        run.Output.Should().Contain("Lot D-0719").And.Contain("never says that a positive was false").And.Contain("Screening is not diagnosis");
        foreach (var culture in new[] { "de-DE", "tr-TR" }) Runner.Under(culture, "alarms", Sample, "--as-of", "2024-11-21").Output.Should().Be(run.Output);
    }

    [Fact]
    public void The_exit_code_is_3_only_where_it_was_asked_for_and_an_alarm_calls_for_action()
    {
        Runner.Of("alarms", Sample, "--as-of", "2024-11-21", "--fail-on-alarm").Code.Should().Be(3);
        Runner.Of("alarms", Sample, "--as-of", "2024-10-10", "--fail-on-alarm").Code.Should().Be(0);
        Runner.Of("alarms", Sample, "--as-of", "yesterday").Code.Should().Be(2);
    }

    // A day's answer depends on nothing that was collected or reported later: the same from files cut off by hand, and from the replay over all days.
    [Theory]
    [InlineData("2024-10-02")]
    [InlineData("2024-10-28")]
    [InlineData("2024-11-20")]
    [InlineData("2024-11-21")]
    [InlineData("2024-12-17")]
    [InlineData("2025-01-16")]
    [InlineData("2025-03-28")]
    public void A_day_is_the_same_bytes_from_the_whole_from_files_cut_off_at_it_and_from_the_replay(string date)
    {
        var day = DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        foreach (var file in new[] { "screening.csv", "controls.csv", "confirmatory.csv" }) File.WriteAllText(Path.Combine(folder, file), CutOff(file, day));
        foreach (var file in new[] { "headcount.csv", "program.json" }) File.Copy(Path.Combine(Sample, file), Path.Combine(folder, file));

        var whole = Runner.Of("alarms", Sample, "--as-of", date, "--json");

        whole.Code.Should().Be(0, whole.Errors);
        Runner.Of("alarms", folder, "--as-of", date, "--json").Output.Should().Be(whole.Output);
        Results.ResultJson.Write(Replayed.Value.Single(found => found.AsOf == day)).Should().Be(whole.Output);
        JsonDocument.Parse(whole.Output).RootElement.GetProperty("asOf").GetString().Should().Be(date);
    }

    private static readonly Lazy<List<AlarmsOfDay>> Replayed = new(() =>
    {
        var program = ScreeningProgram.Open(Sample);
        return [.. AlarmReplay.Over(program.Read().Tally, program.Settings)];
    });

    private static string CutOff(string file, DateOnly day)
    {
        var lines = File.ReadAllLines(Path.Combine(Sample, file));
        return string.Join('\n', lines.Where((line, at) => at == 0 || !IsAfter(line.Split(',')))) + "\n";

        bool IsAfter(string[] fields) => fields.Length > 3 && fields[3].Length >= 10
            && DateOnly.TryParseExact(fields[3][..10], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) && date > day;
    }
}
