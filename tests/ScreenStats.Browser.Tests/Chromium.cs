namespace ScreenStats.Browser.Tests;

/// <summary>The Chromium of the machine: where it is, and how it is started without asking anything of any network.</summary>
internal static class Chromium
{
    /// <summary>Names another Chromium than the first that is found.</summary>
    public const string Variable = "SCREENSTATS_CHROMIUM";

    /// <summary>Why a test is skipped, and what to do.</summary>
    public static readonly string Missing =
        $"No Chromium was found. Install it (Debian: apt-get install --no-install-recommends chromium) or name one in {Variable}.";

    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome"];

    /// <summary>Quiet arguments: no sandbox (the tests may run as root in a container), nothing in the background.</summary>
    public static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
        "--disable-component-update", "--disable-sync",
    ];

    /// <summary>The program; null where there is none.</summary>
    public static string? Path { get; } = Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } named ? named : Find();

    private static string? Find() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
        .SelectMany(folder => Names.Select(name => System.IO.Path.Combine(folder, name))).FirstOrDefault(File.Exists);
}
