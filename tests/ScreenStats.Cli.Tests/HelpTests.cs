using ScreenStats.Testing;

namespace ScreenStats.Cli.Tests;

public sealed class HelpTests
{
    public static TheoryData<string> Names => [.. App.Commands().Select(command => command.Name)];

    [Fact]
    public void Root_help_lists_every_command()
    {
        var run = Runner.Of("--help");

        run.Code.Should().Be(0);
        Golden.Check("cli/help.txt", run.Output);
        foreach (var command in App.Commands()) run.Output.Should().Contain("  " + command.Name + " ");
        Runner.Of("help").Output.Should().Be(run.Output);
    }

    [Fact]
    public void A_command_is_found_by_the_name_it_bears() => App.CommandNames.Should().Equal(App.Commands().Select(command => command.Name)).And.OnlyHaveUniqueItems();

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_command_explains_itself_with_two_examples(string name)
    {
        var run = Runner.Of(name, "--help");

        run.Code.Should().Be(0);
        run.Errors.Should().BeEmpty();
        Golden.Check($"cli/help-{name}.txt", run.Output);
        App.Commands().Single(command => command.Name == name).Examples.Should().HaveCountGreaterThanOrEqualTo(2)
            .And.OnlyContain(example => example.StartsWith($"screenstats {name} ", StringComparison.Ordinal));
        run.Output.Split('\n').Should().OnlyContain(line => line.Length <= 120);
    }

    [Fact]
    public void Examples_of_calculators_work_as_written()
    {
        foreach (var example in App.Commands().Where(command => command.Name is "interval" or "contrast" or "agreement" or "adjust" or "predict" or "prevalence" or "clusters" or "plan" or "cadence")
            .SelectMany(command => command.Examples).Where(example => !example.Contains("my-program", StringComparison.Ordinal)))
        {
            var run = Runner.Of(example.Split(' ')[1..]);
            run.Code.Should().Be(0, example);
        }
    }
}
