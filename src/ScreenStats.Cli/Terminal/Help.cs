using ScreenStats.Cli.Commands;

namespace ScreenStats.Cli.Terminal;

/// <summary>The help screens: plain text, the same on every machine.</summary>
internal static class Help
{
    private const int Width = 100;

    public static string Root(IReadOnlyList<RunnerCommand> commands) => Lines(
    [
        "screenstats: what rapid tests of people without symptoms found, and how far it can be believed",
        "",
        "Usage:",
        "  screenstats <command> [arguments] [options]",
        "",
        "Commands:",
        .. Terms([.. commands.Select(command => (command.Name, command.Summary + "."))]),
        "",
        "Options:",
        .. Terms([("--help", "This text, or after a command the help of that command."), ("--version", "The version.")]),
        "",
        "Examples:",
        "  screenstats evaluate my-program --out report",
        "  screenstats interval 81/263",
        "",
        "Exit codes: 0 done, 1 the data cannot answer, 2 usage, 3 an alarm (only with --fail-on-alarm), 70 a defect of the program, 130 cancelled.",
        "",
        Cautions.Screening,
    ]);

    public static string Of(RunnerCommand command) => Lines(
    [
        $"screenstats {command.Name}: {char.ToLowerInvariant(command.Summary[0])}{command.Summary[1..]}",
        "",
        "Usage:",
        "  " + string.Join(" ", [$"screenstats {command.Name}", .. command.ArgumentHelp.Select(argument => argument.Term), "[options]"]),
        "",
        .. command.ArgumentHelp.Count == 0 ? [] : (string[])["Arguments:", .. Terms(command.ArgumentHelp), ""],
        "Options:",
        .. Terms([.. command.OptionHelp, ("--help", "This text.")]),
        "",
        "Examples:",
        .. command.Examples.SelectMany(Example),
    ]);

    /// <summary>An example, broken before options where it is longer than a line, as a shell takes it.</summary>
    private static IEnumerable<string> Example(string example)
    {
        const int Most = 116;
        var line = "  " + example;
        while (line.Length > Most)
        {
            var at = line.LastIndexOf(" --", Most, StringComparison.Ordinal);
            if (at <= 4) break;
            yield return line[..at] + " \\";
            line = "     " + line[at..];
        }

        yield return line;
    }

    private static string Lines(IEnumerable<string> lines) => string.Join("\n", lines) + "\n";

    private static IEnumerable<string> Terms(IReadOnlyList<(string Term, string Meaning)> terms)
    {
        var indent = terms.Max(term => term.Term.Length) + 4;
        foreach (var (term, meaning) in terms)
        {
            var line = ("  " + term).PadRight(indent);
            foreach (var word in meaning.Split(' '))
            {
                if (line.Length + 1 + word.Length > Width)
                {
                    yield return line;
                    line = new string(' ', indent);
                }

                line += (line.Length > indent ? " " : "") + word;
            }

            yield return line;
        }
    }
}
