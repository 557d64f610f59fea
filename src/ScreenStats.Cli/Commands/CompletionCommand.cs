using System.CommandLine;
using ScreenStats.Cli.Terminal.Completion;

namespace ScreenStats.Cli.Commands;

/// <summary><c>completion</c>: a script for a shell, so that it completes commands, options and their values.</summary>
internal sealed class CompletionCommand : RunnerCommand
{
    private static readonly Dictionary<string, Func<IReadOnlyList<CommandOffer>, IEnumerable<string>>> Shells = new(StringComparer.Ordinal)
    {
        ["bash"] = BashScript.Of,
        ["zsh"] = ZshScript.Of,
        ["fish"] = FishScript.Of,
        ["powershell"] = PowerShellScript.Of,
    };

    private readonly Argument<string> shell;

    public CompletionCommand()
        : base("completion", "A script that lets a shell complete commands, options and their values",
            "screenstats completion bash > ~/.local/share/bash-completion/completions/screenstats", "screenstats completion fish > ~/.config/fish/completions/screenstats.fish")
    {
        shell = TakeArgument("shell", "bash, zsh, fish or powershell. The script says in its first lines where it goes.");
        shell.CompletionSources.Add([.. Shells.Keys]);
    }

    public override int Run(Invocation invocation)
    {
        var name = invocation.Text(shell);
        if (!Shells.TryGetValue(name, out var script)) throw new UsageException($"<shell>: \"{name}\" is not known; write {string.Join(", ", Shells.Keys.SkipLast(1))} or {Shells.Keys.Last()}.");
        foreach (var line in script(CommandOffer.Of(App.Commands()))) invocation.Output.Write(line + "\n");
        return ExitCode.Done;
    }
}
