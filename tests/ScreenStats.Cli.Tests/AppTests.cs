using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Tests;

public sealed class AppTests
{
    [Fact]
    public void Colour_is_only_for_a_terminal_without_NO_COLOR()
    {
        const string escape = "\u001b";
        var terminal = new RunnerEnvironment { OutputIsTerminal = true, Width = 100 };

        Runner.In(terminal, "interval", "1/2").Output.Should().Contain(escape);
        Runner.In(terminal with { Variable = name => name == "NO_COLOR" ? "" : null }, "interval", "1/2").Output.Should().Contain(escape);
        Runner.In(terminal with { Variable = name => name == "NO_COLOR" ? "1" : null }, "interval", "1/2").Output.Should().NotContain(escape);
        Runner.Of("interval", "1/2").Output.Should().NotContain(escape);
    }

    [Fact]
    public void A_defect_is_one_line_without_a_stack_trace_unless_asked_for()
    {
        static int Fail(RunnerEnvironment environment, out string errors)
        {
            using var written = new StringWriter();
            var code = App.Run(["interval", "1/2"], TextReader.Null, new Broken(), written, environment, TimeProvider.System);
            errors = written.ToString();
            return code;
        }

        Fail(new RunnerEnvironment(), out var plain).Should().Be(70);
        plain.Should().Contain("defect of ScreenStats").And.Contain("report").And.NotContain("   at ").And.NotContain("cell text");
        plain.TrimEnd('\n').Should().NotContain("\n");

        Fail(new RunnerEnvironment { Variable = name => name == "SCREENSTATS_DEBUG" ? "1" : null }, out var debugging).Should().Be(70);
        debugging.Should().Contain("   at ");
    }

    [Fact]
    public void The_version_is_said()
    {
        var run = Runner.Of("--version");

        run.Code.Should().Be(0);
        run.Output.Should().MatchRegex(@"^screenstats \d+\.\d+\.\d+\n$");
    }

    private sealed class Broken : StringWriter
    {
        public override void Write(string? value) => throw new InvalidOperationException("cell text");
    }
}
