namespace ScreenStats.Cli.Terminal.Completion;

/// <summary>Completion for fish.</summary>
internal static class FishScript
{
    public static IEnumerable<string> Of(IReadOnlyList<CommandOffer> commands) =>
    [
        "# fish completion for screenstats. For now: screenstats completion fish | source",
        "# For every shell: screenstats completion fish > ~/.config/fish/completions/screenstats.fish",
        "function __screenstats_first; test (count (commandline -opc)) -eq 1; end",
        "function __screenstats_in; set -l words (commandline -opc); test (count $words) -ge 2; and test \"$words[2]\" = $argv[1]; end",
        "complete -c screenstats -f",
        .. CommandOffer.Root.Select(option => $"complete -c screenstats -n __screenstats_first -l {option.Name[2..]} -d {Quoted(option.Meaning)}"),
        .. commands.SelectMany(Command),
    ];

    private static IEnumerable<string> Command(CommandOffer command)
    {
        yield return $"complete -c screenstats -n __screenstats_first -a {command.Name} -d {Quoted(command.Meaning)}";
        var here = $"complete -c screenstats -n '__screenstats_in {command.Name}'";
        foreach (var option in command.Options) yield return $"{here} -l {option.Name[2..]}{Value(option)} -d {Quoted(option.Meaning)}";
        if (command.Argument is { Value: OfferedValue.Words } argument) yield return $"{here} -a {Quoted(string.Join(' ', argument.Words))}";
        else if (command.Argument is { Value: OfferedValue.Folder }) yield return $"{here} -a '(__fish_complete_directories)'";
        else if (command.Argument is { Value: OfferedValue.Path }) yield return $"{here} -F";
    }

    private static string Value(Offer option) => option.Value switch
    {
        OfferedValue.None => "",
        OfferedValue.Words => $" -x -a {Quoted(string.Join(' ', option.Words))}",
        OfferedValue.Path => " -r -F",
        OfferedValue.Folder => " -x -a '(__fish_complete_directories)'",
        _ => " -x",
    };

    private static string Quoted(string text) => "'" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal) + "'";
}
