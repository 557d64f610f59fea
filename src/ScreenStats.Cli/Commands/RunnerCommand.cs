using System.CommandLine;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Commands;

/// <summary>
/// One command: what it takes, how it is explained, and what it does (parse, one library call, render). The parser library
/// only splits the line; every value reaches our own parsers as text.
/// </summary>
internal abstract class RunnerCommand
{
    private readonly List<(string Term, string Meaning)> arguments = [];
    private readonly List<(string Term, string Meaning)> options = [];
    private readonly Option<bool> json = new("--json");

    protected RunnerCommand(string name, string summary, params string[] examples)
    {
        Name = name;
        Summary = summary;
        Examples = examples;
        Syntax = new Command(name);
    }

    public string Name { get; }

    /// <summary>What it does, one line without a full stop.</summary>
    public string Summary { get; }

    /// <summary>Command lines that work as written.</summary>
    public IReadOnlyList<string> Examples { get; }

    public Command Syntax { get; }

    public IReadOnlyList<(string Term, string Meaning)> ArgumentHelp => arguments;

    public IReadOnlyList<(string Term, string Meaning)> OptionHelp => options;

    /// <summary>Does the work and answers the exit code.</summary>
    public abstract int Run(Invocation invocation);

    protected Argument<string> TakeArgument(string name, string meaning)
    {
        var argument = new Argument<string>(name) { Arity = ArgumentArity.ExactlyOne, Description = meaning };
        Syntax.Arguments.Add(argument);
        arguments.Add(($"<{name}>", meaning));
        return argument;
    }

    /// <summary>An argument that another option may take the place of; the command itself says when it is missing.</summary>
    protected Argument<string?> TakeOptionalArgument(string name, string meaning)
    {
        var argument = new Argument<string?>(name) { Arity = ArgumentArity.ZeroOrOne, Description = meaning };
        Syntax.Arguments.Add(argument);
        arguments.Add(($"[<{name}>]", meaning));
        return argument;
    }

    protected Option<string> TakeOption(string name, string value, string meaning, bool required = false)
    {
        var option = new Option<string>(name) { Arity = ArgumentArity.ExactlyOne, Required = required, HelpName = value, Description = meaning };
        Syntax.Options.Add(option);
        options.Add(($"{name} <{value}>", meaning + (required ? " Required." : "")));
        return option;
    }

    /// <summary>An option with a word, and where that word asks for it one more.</summary>
    protected Option<string[]> TakePair(string name, string value, string meaning)
    {
        var option = new Option<string[]>(name) { Arity = new ArgumentArity(1, 2), AllowMultipleArgumentsPerToken = true, HelpName = value, Description = meaning };
        Syntax.Options.Add(option);
        options.Add(($"{name} <{value}>", meaning));
        return option;
    }

    protected Option<bool> TakeSwitch(string name, string meaning)
    {
        var option = new Option<bool>(name) { Arity = ArgumentArity.Zero, Description = meaning };
        Syntax.Options.Add(option);
        options.Add((name, meaning));
        return option;
    }

    /// <summary>The counts of a partly verified screen, and what is stated of its confirmatory test.</summary>
    protected VerificationOptions TakeVerification() => new(
        TakeOption("--positives", "counts", "Of the verified positive screens, those the confirmatory test confirmed, such as 231/263.", required: true),
        TakeOption("--negatives", "counts", "Of the verified negative screens, those the confirmatory test found positive, such as 27/81. Default none verified."),
        TakeOption("--unverified-positives", "number", "Positive screens without a conclusive confirmatory result. Default 0."),
        TakeOption("--unverified-negatives", "number", "Negative screens without a conclusive confirmatory result. Default 0."),
        TakeOption("--confirmatory-sensitivity", "share", "Sensitivity of the confirmatory test. Default: its word is the truth."),
        TakeOption("--confirmatory-specificity", "share", "Specificity of the confirmatory test."));

    /// <summary>Every command ends its options with these.</summary>
    protected void TakeJson()
    {
        json.Arity = ArgumentArity.Zero;
        json.Description = "One JSON object on standard output, in full precision.";
        Syntax.Options.Add(json);
        options.Add(("--json", json.Description));
    }

    protected bool WantsJson(Invocation invocation) => invocation.Parsed.GetValue(json);
}
