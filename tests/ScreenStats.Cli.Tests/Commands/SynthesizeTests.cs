using System.Text.Json;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Cli.Tests.Commands;

public sealed class SynthesizeTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("synthesize").FullName;

    private RunnerEnvironment Here => new() { Folder = folder };

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void A_program_is_written_with_its_truth_and_a_program_file_that_can_be_read()
    {
        var run = Runner.In(Here, "synthesize", "made-up", "--seed", "7", "--runs", "300", "--json");

        run.Code.Should().Be(0, run.Errors);
        using var truth = JsonDocument.Parse(run.Output);
        truth.RootElement.GetProperty("seed").GetUInt64().Should().Be(7);
        var lines = File.ReadLines(Path.Combine(folder, "made-up", "screening.csv")).Count() - 1;
        truth.RootElement.GetProperty("rows").GetInt64().Should().Be(lines);
        ProgramFile.Parse(File.ReadAllText(Path.Combine(folder, "made-up", "program.json"))).Screens.Should().NotBeEmpty();
    }

    [Fact]
    public void The_same_seed_gives_the_same_bytes()
    {
        Runner.In(Here, "synthesize", "one", "--seed", "7", "--runs", "300").Code.Should().Be(0);
        Runner.Under("de-DE", "synthesize", Path.Combine(folder, "two"), "--seed", "7", "--runs", "300").Code.Should().Be(0);

        foreach (var file in Directory.GetFiles(Path.Combine(folder, "one")))
            File.ReadAllBytes(Path.Combine(folder, "two", Path.GetFileName(file))).Should().Equal(File.ReadAllBytes(file), file);
    }

    [Fact]
    public void A_folder_with_exports_of_others_is_left_alone()
    {
        File.WriteAllText(Path.Combine(folder, "screening.csv"), "mine");

        var run = Runner.In(Here, "synthesize", ".", "--seed", "7");

        run.Code.Should().Be(2);
        run.Errors.Should().Contain("nothing was written").And.NotContain("   at ");
        Directory.GetFiles(folder).Should().ContainSingle();
        File.ReadAllText(Path.Combine(folder, "screening.csv")).Should().Be("mine");
    }

    [Theory]
    [InlineData("synthesize", "x")]
    [InlineData("synthesize", "x", "--seed", "-1")]
    [InlineData("synthesize", "x", "--seed", "1", "--runs", "0")]
    [InlineData("synthesize", "x", "--seed", "1", "--runs", "1,000")]
    public void Impossible_figures_are_usage_errors(params string[] args)
    {
        Runner.In(Here, args).Code.Should().Be(2);
        Directory.Exists(Path.Combine(folder, "x")).Should().BeFalse();
    }

    [Fact]
    public void A_missing_plan_is_one_message()
    {
        var run = Runner.In(Here, "synthesize", "x", "--seed", "1", "--plan", "nowhere.json");

        run.Code.Should().Be(1);
        run.Errors.Should().Contain("nowhere.json").And.NotContain("   at ");
    }
}
