using System.Text.Json;
using ScreenStats.Synthesis;
using ScreenStats.Testing;

namespace ScreenStats.Tests.Synthesis;

/// <summary>The committed sample data come from the committed plan and seed, and from nowhere else.</summary>
public sealed class SampleDataTests
{
    internal static string Folder => RepositoryRoot.Combine("sample-data", "marrowlight");

    [Fact]
    public void The_committed_plan_and_seed_give_the_committed_bytes()
    {
        using var folder = new TemporaryFolder();
        using var truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "truth.json")));
        SyntheticProgram.Write(SynthesisPlan.Read(Path.Combine(Folder, "plan.json")), truth.RootElement.GetProperty("seed").GetUInt64(), folder.Path);

        var committed = Directory.GetFiles(Folder).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal).ToArray();
        Directory.GetFiles(folder.Path).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal).Should().Equal(committed);
        foreach (var name in committed)
        {
            File.ReadAllBytes(folder.Combine(name)).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(Folder, name))).Should().BeTrue("{0} is generated", name);
        }
    }

    [Fact]
    public void The_program_file_is_read_without_complaint()
    {
        var settings = ScreeningProgram.Open(Folder).Settings;
        settings.Screens.Select(screen => screen.Name).Should().Equal("Halvet strip", "Dorrin card");
        settings.Screens.SelectMany(screen => screen.Lots).Should().HaveCount(11);
        settings.Policy.IsolationDays.Should().Be(7);
        settings.Prevalence!.Source.Should().Contain("fictional");
    }
}
