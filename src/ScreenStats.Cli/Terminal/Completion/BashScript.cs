namespace ScreenStats.Cli.Terminal.Completion;

/// <summary>Completion for bash, from 3.2 on.</summary>
internal static class BashScript
{
    public static IEnumerable<string> Of(IReadOnlyList<CommandOffer> commands) =>
    [
        "# bash completion for screenstats. For now: eval \"$(screenstats completion bash)\"",
        "# For every shell: screenstats completion bash > ~/.local/share/bash-completion/completions/screenstats",
        "_screenstats_words() { COMPREPLY=($(compgen -W \"$1\" -- \"$2\")); }",
        "_screenstats_paths() {",
        "    local name",
        "    compopt -o filenames 2>/dev/null || :",
        "    while IFS= read -r name; do COMPREPLY+=(\"$name\"); done < <(compgen \"$1\" -- \"$2\")",
        "}",
        "_screenstats() {",
        "    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} command=${COMP_WORDS[1]}",
        "    COMPREPLY=()",
        "    if [ \"$COMP_CWORD\" -eq 1 ]; then",
        $"        _screenstats_words '{string.Join(' ', [.. commands.Select(command => command.Name), .. CommandOffer.Root.Select(option => option.Name)])}' \"$word\"",
        "        return",
        "    fi",
        "    # --option=value is three words.",
        "    if [ \"$before\" = = ]; then before=${COMP_WORDS[COMP_CWORD-2]}; elif [ \"$word\" = = ]; then word=''; fi",
        "    case \"$command $before\" in",
        .. Values(commands),
        "    esac",
        "    case $command in",
        .. commands.SelectMany(Command),
        "    esac",
        "}",
        "complete -F _screenstats screenstats",
    ];

    private static IEnumerable<string> Values(IReadOnlyList<CommandOffer> commands)
    {
        foreach (var option in commands.SelectMany(command => command.Taking(OfferedValue.Words), (command, option) => (command, option)))
            yield return $"        '{option.command.Name} {option.option.Name}') _screenstats_words '{string.Join(' ', option.option.Words)}' \"$word\"; return ;;";
        foreach (var (value, action) in ((OfferedValue, string)[])[(OfferedValue.Path, "_screenstats_paths -f \"$word\"; return"), (OfferedValue.Folder, "_screenstats_paths -d \"$word\"; return"), (OfferedValue.Unknown, "return")])
        {
            var cases = commands.SelectMany(command => command.Taking(value), (command, option) => $"'{command.Name} {option.Name}'").ToList();
            if (cases.Count > 0) yield return $"        {string.Join('|', cases)}) {action} ;;";
        }
    }

    private static IEnumerable<string> Command(CommandOffer command) =>
    [
        $"        {command.Name})",
        "            case $word in",
        $"                -*) _screenstats_words '{string.Join(' ', command.Options.Select(option => option.Name))}' \"$word\" ;;",
        .. command.Argument switch
        {
            { Value: OfferedValue.Words } argument => (string[])[$"                *) _screenstats_words '{string.Join(' ', argument.Words)}' \"$word\" ;;"],
            { Value: OfferedValue.Path } => ["                *) _screenstats_paths -f \"$word\" ;;"],
            { Value: OfferedValue.Folder } => ["                *) _screenstats_paths -d \"$word\" ;;"],
            _ => [],
        },
        "            esac ;;",
    ];
}
