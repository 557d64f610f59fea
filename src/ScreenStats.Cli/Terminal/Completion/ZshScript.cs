namespace ScreenStats.Cli.Terminal.Completion;

/// <summary>Completion for zsh.</summary>
internal static class ZshScript
{
    public static IEnumerable<string> Of(IReadOnlyList<CommandOffer> commands) =>
    [
        "#compdef screenstats",
        "# zsh completion for screenstats. For now: source <(screenstats completion zsh)",
        "# For every shell: save it as _screenstats in a folder of $fpath.",
        "_screenstats() {",
        "    local -a commands",
        "    if (( CURRENT == 2 )); then",
        "        commands=(",
        .. commands.Select(command => $"            {Quoted(command.Name + ":" + command.Meaning)}"),
        .. CommandOffer.Root.Select(option => $"            {Quoted(option.Name + ":" + option.Meaning)}"),
        "        )",
        "        _describe -t commands command commands",
        "        return",
        "    fi",
        "    local command=$words[2]",
        "    shift words",
        "    (( CURRENT-- ))",
        "    case $command in",
        .. commands.SelectMany(Command),
        "    esac",
        "}",
        "if [[ $funcstack[1] == _screenstats ]]; then _screenstats \"$@\"; else compdef _screenstats screenstats; fi",
    ];

    private static IEnumerable<string> Command(CommandOffer command) =>
    [
        $"        {command.Name})",
        "            _arguments \\",
        .. command.Options.Select(option => $"                {Quoted($"{option.Name}[{Spec(option.Meaning)}]{Action(option)}")} \\"),
        $"                {Quoted(command.Argument is { } argument ? $"1{Action(argument)}" : "*: :")} ;;",
    ];

    private static string Action(Offer offer) => offer.Value switch
    {
        OfferedValue.None => "",
        OfferedValue.Words => $":{Spec(offer.Name)}:({string.Join(' ', offer.Words)})",
        OfferedValue.Path => $":{Spec(offer.Name)}:_files",
        OfferedValue.Folder => $":{Spec(offer.Name)}:_files -/",
        _ => $":{Spec(offer.Name)}: ",
    };

    private static string Spec(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("[", "\\[", StringComparison.Ordinal)
        .Replace("]", "\\]", StringComparison.Ordinal).Replace(":", "\\:", StringComparison.Ordinal);

    private static string Quoted(string text) => "'" + text.Replace("'", "'\\''", StringComparison.Ordinal) + "'";
}
