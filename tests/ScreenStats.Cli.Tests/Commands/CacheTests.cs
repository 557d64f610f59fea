namespace ScreenStats.Cli.Tests.Commands;

/// <summary>The option <c>--cache</c> of the commands that read a program.</summary>
public class CacheTests
{
    [Fact]
    public void A_report_with_a_cache_has_the_bytes_of_one_without_and_stderr_says_what_was_read()
    {
        using var program = new ProgramOnDisk();
        var plain = Runner.In(program.Here, "evaluate", "works");
        plain.Code.Should().Be(ExitCode.Done, plain.Errors);
        var expected = Files(program.Report);
        expected.Should().ContainKeys("manifest.json", "findings.json", "set-aside.csv");

        Run("note: 0 of 2 files came from the cache, 2 were read.");
        Run("note: 2 of 2 files came from the cache, none was read.");
        program.Write("screening-2.csv", ProgramOnDisk.Screening.Replace("2026-01-0", "2026-01-1", StringComparison.Ordinal));
        Runner.In(program.Here, "evaluate", "works");
        expected = Files(program.Report);
        Run("note: 2 of 3 files came from the cache, 1 was read.");
        Directory.EnumerateFileSystemEntries(program.Root).Select(path => Path.GetFileName(path)).Should().BeEquivalentTo("works", "report", "kept");

        void Run(string said)
        {
            var cached = Runner.In(program.Here, "evaluate", "works", "--cache", "kept");
            cached.Code.Should().Be(ExitCode.Done, cached.Errors);
            cached.Errors.Should().Contain(said);
            Files(program.Report).Should().BeEquivalentTo(expected);
        }
    }

    [Theory]
    [InlineData("inspect")]
    [InlineData("alarms")]
    [InlineData("value")]
    public void Other_commands_that_read_a_program_take_it_too_and_print_the_same(string command)
    {
        using var program = new ProgramOnDisk();
        var plain = Runner.In(program.Here, command, "works");
        foreach (var said in (string[])["note: 0 of 2 files came from the cache, 2 were read.", "note: 2 of 2 files came from the cache, none was read."])
        {
            var cached = Runner.In(program.Here, command, "works", "--cache", "kept");
            cached.Output.Should().Be(plain.Output);
            cached.Code.Should().Be(plain.Code);
            cached.Errors.Should().Be(said + "\n" + plain.Errors);
        }
    }

    [Fact]
    public void Text_of_rows_set_aside_is_the_same_though_the_cache_does_not_hold_it()
    {
        using var program = new ProgramOnDisk();
        program.Write("screening.csv", ProgramOnDisk.Screening + $"{ProgramOnDisk.Secret},Dock,soon,negative,A1\n");
        Runner.In(program.Here, "evaluate", "works", "--set-aside-text");
        var expected = File.ReadAllText(Path.Combine(program.Report, "set-aside.csv"));
        expected.Should().Contain(ProgramOnDisk.Secret);
        for (var run = 0; run < 2; run++)
        {
            Runner.In(program.Here, "evaluate", "works", "--set-aside-text", "--cache", "kept").Code.Should().Be(ExitCode.Done);
            File.ReadAllText(Path.Combine(program.Report, "set-aside.csv")).Should().Be(expected);
        }

        foreach (var file in Directory.GetFiles(Path.Combine(program.Root, "kept"))) System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(file)).Should().NotContain(ProgramOnDisk.Secret);
    }

    [Fact]
    public void A_folder_that_is_no_cache_is_a_usage_error_before_anything_is_read()
    {
        using var program = new ProgramOnDisk();
        var refused = Runner.In(program.Here, "evaluate", "works", "--cache", "works");
        refused.Code.Should().Be(ExitCode.Usage);
        refused.Errors.Should().Be("screenstats: The folder of the cache holds other things; name an empty one, or one that does not exist yet.\n");
        Directory.Exists(program.Report).Should().BeFalse();
        Runner.In(program.Here, "inspect", "works", "--cache", "").Code.Should().Be(ExitCode.Usage);
        Runner.In(program.Here, "inspect", "works", "--cache", "a/../b").Code.Should().Be(ExitCode.Usage);
    }

    private static Dictionary<string, string> Files(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .ToDictionary(path => Path.GetRelativePath(folder, path), path => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path))));
}
