using ScreenStats.Cli.Commands;
using ScreenStats.Cli.Terminal.Completion;

namespace ScreenStats.Cli.Tests.Completion;

/// <summary>The scripts of <c>completion</c>, in the shells that are on this machine.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("completion").FullName;

    public CompletionTests()
    {
        Directory.CreateDirectory(Path.Combine(folder, "works"));
        File.WriteAllText(Path.Combine(folder, "works.csv"), "");
    }

    public static TheoryData<string> Shells => [.. Shell.Here];

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public void A_shell_is_there_to_ask() => Shell.Here.Should().NotBeEmpty();

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task Every_command_is_offered_first(string shell)
    {
        var offered = await Shell.Offers(shell, folder, "screenstats", "");

        offered.Where(word => word[0] != '-').Should().BeEquivalentTo([.. App.Commands().Select(command => command.Name), "help"]);
        (await Shell.Offers(shell, folder, "screenstats", "ev")).Should().Equal("evaluate");
    }

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task Each_command_is_offered_its_own_options_and_no_other(string shell)
    {
        // Every command in the quick shell, one in the slow ones.
        foreach (var command in App.Commands().Where(command => shell == "bash" || command.Name == "evaluate"))
        {
            (await Shell.Offers(shell, folder, "screenstats", command.Name, "--"))
                .Should().BeEquivalentTo([.. OptionsInHelp(command), "--help"], $"{shell}, {command.Name}");
        }
    }

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task Values_are_offered_where_they_are_few(string shell)
    {
        (await Shell.Offers(shell, folder, "screenstats", "evaluate", "works", "--by", "s")).Should().Equal("site", "specimen");
        (await Shell.Offers(shell, folder, "screenstats", "plan", "z")).Should().Equal("zero-events");
        (await Shell.Offers(shell, folder, "screenstats", "help", "inte")).Should().Equal("interval");
        (await Shell.Offers(shell, folder, "screenstats", "completion", "")).Should().Equal("bash", "fish", "powershell", "zsh");
    }

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task Files_are_offered_where_a_program_stands_and_folders_alone_where_a_folder_does(string shell)
    {
        (await Shell.Offers(shell, folder, "screenstats", "evaluate", "wor")).Select(Path.GetFileName).Should().Equal("works", "works.csv");
        var folders = await Shell.Offers(shell, folder, "screenstats", "evaluate", "works", "--out", "wor");
        folders.Should().Contain(name => name.EndsWith("works", StringComparison.Ordinal));
        // PowerShell offers files by itself where we offer nothing.
        if (shell != "powershell") folders.Should().ContainSingle();
    }

    [Fact]
    public async Task In_bash_an_option_with_an_equals_sign_is_completed_too()
    {
        if (!Shell.Here.Contains("bash")) Assert.Skip("There is no bash here.");

        (await Shell.Offers("bash", folder, "screenstats", "evaluate", "works", "--by", "=", "k")).Should().Equal("kit");
        (await Shell.Offers("bash", folder, "screenstats", "evaluate", "works", "--by", "=")).Should().Equal("kit", "operator", "region", "site", "specimen");
        (await Shell.Offers("bash", folder, "screenstats", "evaluate", "works", "--as-of", "")).Should().BeEmpty("nobody but the person knows the day");
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("powershell")]
    public void A_script_holds_every_command_and_option_and_plain_letters_only_in_every_culture(string shell)
    {
        var script = Runner.Of("completion", shell).Output;

        foreach (var command in App.Commands())
        {
            script.Should().Contain(command.Name);
            foreach (var option in OptionsInHelp(command)) script.Should().Contain(shell == "fish" ? $" -l {option[2..]} " : option);
        }

        script.Should().MatchRegex("^[\n -~]+$").And.Contain("# " + (shell == "powershell" ? "PowerShell" : shell)).And.EndWith("\n");
        foreach (var culture in (string[])["de-DE", "tr-TR"]) Runner.Under(culture, "completion", shell).Output.Should().Be(script);
    }

    [Fact]
    public void A_word_that_is_offered_stands_in_the_help()
    {
        foreach (var command in CommandOffer.Of(App.Commands()).Where(command => command.Name != "help"))
        {
            var help = Runner.Of(command.Name, "--help").Output;
            foreach (var word in command.Options.Append(command.Argument).SelectMany(offer => offer?.Words ?? [])) help.Should().Contain(word, command.Name);
        }
    }

    [Fact]
    public void Another_shell_is_refused_with_the_names_there_are()
    {
        var run = Runner.Of("completion", "tcsh");

        run.Code.Should().Be(2);
        run.Output.Should().BeEmpty();
        run.Errors.Should().Contain("<shell>: \"tcsh\" is not known; write bash, zsh, fish or powershell.");
    }

    // The help is a list of its own, held by golden files.
    private static IEnumerable<string> OptionsInHelp(RunnerCommand command) => command.OptionHelp.Select(option => option.Term.Split(' ')[0]);
}
