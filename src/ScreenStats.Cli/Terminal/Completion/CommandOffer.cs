using System.CommandLine;
using System.CommandLine.Completions;
using ScreenStats.Cli.Commands;

namespace ScreenStats.Cli.Terminal.Completion;

/// <summary>A command as a shell offers it: read off the tree that the parser itself uses, so that no list is kept twice.</summary>
/// <param name="Name">The command.</param>
/// <param name="Meaning">One line for people.</param>
/// <param name="Options">Its options.</param>
/// <param name="Argument">What is written first after it; null for nothing.</param>
internal sealed record CommandOffer(string Name, string Meaning, IReadOnlyList<Offer> Options, Offer? Argument)
{
    /// <summary>Options that stand in the place of a command.</summary>
    public static IReadOnlyList<Offer> Root { get; } =
        [new("--help", "What there is.", OfferedValue.None, []), new("--version", "The version.", OfferedValue.None, [])];

    public static IReadOnlyList<CommandOffer> Of(IReadOnlyList<RunnerCommand> commands) => [.. commands.Select(Of), Help(commands)];

    /// <summary>Options of one kind of value.</summary>
    public IEnumerable<Offer> Taking(OfferedValue value) => Options.Where(option => option.Value == value);

    private static CommandOffer Of(RunnerCommand command)
    {
        var arguments = command.Syntax.Arguments;
        return new(command.Name, command.Summary + ".",
        [
            .. command.Syntax.Options.Select(option => Offered(option.Name, option.Description ?? "", option.HelpName, option.Arity.MaximumNumberOfValues, option.Arity.MaximumNumberOfValues == 0 ? [] : Words(option.GetCompletions(CompletionContext.Empty)))),
            new("--help", "What it takes.", OfferedValue.None, []),
        ], arguments.Count == 0 ? null : Offered(arguments[0].Name, arguments[0].Description ?? "", arguments[0].Name, 1, Words(arguments[0].GetCompletions(CompletionContext.Empty))));
    }

    private static CommandOffer Help(IReadOnlyList<RunnerCommand> commands) =>
        new("help", "What a command takes.", [], new("command", "A command.", OfferedValue.Words, [.. commands.Select(command => command.Name)]));

    private static Offer Offered(string name, string meaning, string? value, int most, string[] words) => new(name, FirstSentence(meaning),
        most == 0 ? OfferedValue.None
        : words.Length > 0 ? OfferedValue.Words
        : value switch { "folder" => OfferedValue.Folder, "file" or "program" => OfferedValue.Path, _ => OfferedValue.Unknown }, words);

    private static string[] Words(IEnumerable<CompletionItem> items) => [.. items.Select(item => item.Label).Order(StringComparer.Ordinal)];

    private static string FirstSentence(string text)
    {
        var end = text.IndexOf(". ", StringComparison.Ordinal);
        return end < 0 ? text : text[..(end + 1)];
    }
}
