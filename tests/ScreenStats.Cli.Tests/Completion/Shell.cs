using System.Diagnostics;

namespace ScreenStats.Cli.Tests.Completion;

/// <summary>A shell of this machine with our script loaded, asked what it would offer.</summary>
internal static class Shell
{
    // bash: the function is called as the shell calls it, with the line as the shell splits it.
    private const string Bash = """
        source "$1"; shift
        if [ "${1-}" = syntax ]; then exit 0; fi
        complete -p screenstats >/dev/null || exit 9
        COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMP_LINE="$*"; COMP_POINT=${#COMP_LINE}
        _screenstats
        printf '%s\n' "${COMPREPLY[@]}"
        """;

    // zsh: a real line editor on a lent terminal, asked when it shows that it listens; what it would add to its list goes to a file.
    private const string Zsh = """
        zmodload zsh/zpty
        export OFFERED=$2/offered ASKED=$1 FOLDER=$2
        print -r -- '
            autoload -U compinit; compinit -u -D; source $ASKED; cd $FOLDER; bindkey -e; bindkey "^I" complete-word
            compadd() {
                if [[ ${@[1,(i)(-|--)]} == *-(O|A|D)\ * ]]; then builtin compadd "$@"; return; fi
                typeset -a hits; builtin compadd -A hits "$@"; print -rl -- $hits >> $OFFERED; builtin compadd "$@"
            }
            PROMPT="READY TO BE ASKED "' > $2/setup
        zpty asked zsh -f -i
        zpty -w asked "source $2/setup"
        zpty -r asked before '*READY TO BE ASKED*'
        zpty -w -n asked "${*[3,-1]}"$'\t\x15exit\n'
        while zpty -r asked after; do :; done
        cat $OFFERED 2>/dev/null
        """;

    private const string Fish = """source $argv[1]; complete -C "$argv[2..-1]" | string split -f1 \t""";

    private const string PowerShell = """
        param($script, $line)
        . ([scriptblock]::Create((Get-Content -Raw $script)))
        (TabExpansion2 -inputScript $line -cursorColumn $line.Length).CompletionMatches | ForEach-Object { $_.CompletionText }
        """;

    /// <summary>The shells that are here; bash is everywhere but on Windows.</summary>
    public static IEnumerable<string> Here => ((string[])["bash", "zsh", "fish", "powershell"]).Where(shell => Program(shell) is not null);

    /// <summary>What the shell offers for the last of the words, sorted.</summary>
    public static async Task<string[]> Offers(string shell, string folder, params string[] words)
    {
        var script = Path.Combine(folder, "completion-script");
        await File.WriteAllTextAsync(script, Runner.Of("completion", shell).Output, TestContext.Current.CancellationToken);
        var caller = Path.Combine(folder, "caller.ps1");
        await File.WriteAllTextAsync(caller, shell == "zsh" ? Zsh : PowerShell, TestContext.Current.CancellationToken);
        File.Delete(Path.Combine(folder, "offered"));
        string[] args = shell switch
        {
            "bash" => ["--norc", "--noprofile", "-c", Bash, "bash", script, .. words],
            "zsh" => ["-f", caller, script, folder, .. words],
            "fish" => ["--no-config", "-c", Fish, script, .. words],
            _ => ["-NoProfile", "-NonInteractive", "-File", caller, script, string.Join(' ', words)],
        };
        var start = new ProcessStartInfo(Program(shell)!, args) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        // fish writes its history and settings there.
        start.Environment["HOME"] = folder;
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        (await errors).Should().BeEmpty(shell);
        return [.. output.Split('\n').Select(line => line.TrimEnd('\r', '/', ' ')).Where(line => line.Length > 0).Distinct().Order(StringComparer.Ordinal)];
    }

    private static string? Program(string shell) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, shell == "powershell" ? "pwsh" : shell)).FirstOrDefault(File.Exists);
}
