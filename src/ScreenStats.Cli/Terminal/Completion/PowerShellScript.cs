namespace ScreenStats.Cli.Terminal.Completion;

/// <summary>Completion for PowerShell. Where nothing is offered it offers files itself.</summary>
internal static class PowerShellScript
{
    public static IEnumerable<string> Of(IReadOnlyList<CommandOffer> commands) =>
    [
        "# PowerShell completion for screenstats. For now: screenstats completion powershell | Out-String | Invoke-Expression",
        "# For every shell: put that line into the file that $PROFILE names.",
        "Register-ArgumentCompleter -Native -CommandName screenstats -ScriptBlock {",
        "    param($word, $line, $cursor)",
        "    $commands = [ordered]@{",
        .. commands.Select(command => $"        {Quoted(command.Name)} = {Quoted(command.Meaning)}"),
        .. CommandOffer.Root.Select(option => $"        {Quoted(option.Name)} = {Quoted(option.Meaning)}"),
        "    }",
        "    $options = @{",
        .. commands.SelectMany(command => (IEnumerable<string>)
        [
            $"        {Quoted(command.Name)} = [ordered]@{{",
            .. command.Options.Select(option => $"            {Quoted(option.Name)} = {Quoted(option.Meaning)}"),
            "        }",
        ]),
        "    }",
        "    $values = @{",
        .. commands.SelectMany(command => command.Options.Where(option => option.Value != OfferedValue.None), (command, option) => $"        {Quoted($"{command.Name} {option.Name}")} = @({Words(option)})"),
        .. commands.Where(command => command.Argument is { Value: OfferedValue.Words }).Select(command => $"        {Quoted(command.Name)} = @({Words(command.Argument!)})"),
        "    }",
        "    $written = @($line.CommandElements | ForEach-Object { $_.ToString() })",
        "    if ($word -ne '') { $written = @($written | Select-Object -SkipLast 1) }",
        "    $command = if ($written.Count -gt 1) { $written[1] } else { '' }",
        "    $before = \"$command $($written[-1])\"",
        "    $offered = if ($written.Count -le 1) { $commands }",
        "        elseif ($written.Count -gt 2 -and $values.ContainsKey($before)) { $values[$before] }",
        "        elseif ($word -like '-*') { $options[$command] }",
        "        else { $values[$command] }",
        "    $names = if ($offered -is [System.Collections.IDictionary]) { $offered.Keys } else { $offered }",
        "    foreach ($name in @($names)) {",
        "        if (-not $name -or -not $name.StartsWith($word)) { continue }",
        "        $meaning = if ($offered -is [System.Collections.IDictionary]) { $offered[$name] } else { $name }",
        "        [System.Management.Automation.CompletionResult]::new($name, $name, 'ParameterValue', $meaning)",
        "    }",
        "}",
    ];

    private static string Words(Offer offer) => string.Join(", ", offer.Words.Select(Quoted));

    private static string Quoted(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";
}
