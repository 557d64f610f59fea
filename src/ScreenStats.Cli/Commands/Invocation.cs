using System.CommandLine;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Cli.Commands;

/// <summary>One run of a command: what was written, and where its words go.</summary>
internal sealed record Invocation(ParseResult Parsed, TextWriter Output, TextWriter Errors, RunnerEnvironment Environment, TimeProvider Time)
{
    public Screen Screen { get; } = new(Output, Environment);

    /// <summary>How far the work is, on the screen of a person who waits.</summary>
    public ProgressLine Progress { get; } = new(Errors, Environment, Time);

    /// <summary>Says something beside the result.</summary>
    public void Say(string text) => Errors.Write(Wrapped.Of(Printable.Of(text), Environment.ErrorWidth) + "\n");

    /// <summary>Says what was found in the data.</summary>
    public void Say(IEnumerable<Diagnostic> found) => DiagnosticLines.Write(Errors, found, Environment.ErrorWidth);

    /// <summary>The text of an argument; the parser made sure that it is there.</summary>
    public string Text(Argument<string> argument) => Parsed.GetRequiredValue(argument);

    /// <summary>The text of an argument that may be missing, or null.</summary>
    public string? OptionalText(Argument<string?> argument) => Parsed.GetValue(argument);

    /// <summary>The text of an option, or null where it was not written.</summary>
    public string? Text(Option<string> option) => Parsed.GetValue(option);
}
