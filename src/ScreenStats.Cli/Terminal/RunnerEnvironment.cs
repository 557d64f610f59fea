namespace ScreenStats.Cli.Terminal;

/// <summary>What surrounds a run: variables, folder, terminals and the wish to stop.</summary>
internal sealed record RunnerEnvironment
{
    private const int Unlimited = 10_000;
    private const int Page = 80;
    private const int Narrowest = 40;

    /// <summary>The value of an environment variable, or null.</summary>
    public Func<string, string?> Variable { get; init; } = _ => null;

    /// <summary>The folder that relative paths start from.</summary>
    public string Folder { get; init; } = ".";

    /// <summary>Whether the result goes to a person's screen.</summary>
    public bool OutputIsTerminal { get; init; }

    /// <summary>Whether progress and errors go to a person's screen.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>Columns of the screen, for tables; unlimited where the result goes to a file or another program.</summary>
    public int Width { get; init; } = Unlimited;

    /// <summary>Columns of a line of text in the result: those of the screen, or of a page where it goes to a file or another program.</summary>
    public int ProseWidth { get => field > 0 ? field : Width; init; }

    /// <summary>Columns of a line of progress and errors.</summary>
    public int ErrorWidth { get => field > 0 ? field : Width; init; }

    /// <summary>Set when the person asks to stop.</summary>
    public CancellationToken Cancelled { get; init; }

    /// <summary>A terminal that knows no more than letters and line ends: no sequence is sent to it, and no line is written over.</summary>
    public bool Dumb => Variable("TERM") == "dumb";

    /// <summary>Colour only on a terminal that knows it, and only where NO_COLOR is unset or empty.</summary>
    public bool ColorAllowed => OutputIsTerminal && !Dumb && string.IsNullOrEmpty(Variable("NO_COLOR"));

    /// <summary>Whether a defect shows its stack trace.</summary>
    public bool Debugging => Variable("SCREENSTATS_DEBUG") == "1";

    /// <summary>The environment of this process.</summary>
    public static RunnerEnvironment OfProcess(CancellationToken cancelled)
    {
        var (output, errors) = (!Console.IsOutputRedirected, !Console.IsErrorRedirected);
        var screen = output ? Math.Max(Narrowest, Console.WindowWidth) : Page;
        return new()
        {
            Variable = Environment.GetEnvironmentVariable,
            Folder = CurrentFolder(),
            OutputIsTerminal = output,
            ErrorIsTerminal = errors,
            Width = output ? screen : Unlimited,
            ProseWidth = screen,
            ErrorWidth = errors ? screen : Page,
            Cancelled = cancelled,
        };
    }

    // A folder that was removed under the process has no path: the root stands for it, so that a relative name is not found and is said not to be.
    private static string CurrentFolder()
    {
        try
        {
            return Directory.GetCurrentDirectory();
        }
        catch (IOException)
        {
            return Path.GetPathRoot(AppContext.BaseDirectory)!;
        }
    }

    /// <summary>A path as the person wrote it, made absolute.</summary>
    public string PathOf(string written) => Path.GetFullPath(Path.Combine(Folder, written));

    /// <summary>The place of something that is to be written. It may lie above the folder (../report), but a name followed by .. is refused: it hides where the result goes.</summary>
    public string OutputPathOf(string option, string written)
    {
        if (string.IsNullOrWhiteSpace(written)) throw new UsageException($"{option} needs a name.");
        if (written.Any(char.IsControl)) throw new UsageException($"{option}: the name holds a control character; write another.");
        var named = false;
        foreach (var part in written.Split('/', Path.DirectorySeparatorChar))
        {
            if (part == ".." && named) throw new UsageException($"{option}: \"{written}\" goes back (..) behind the name of a folder; write the place itself.");
            named |= part is not ("" or "." or "..");
        }

        return PathOf(written);
    }
}
