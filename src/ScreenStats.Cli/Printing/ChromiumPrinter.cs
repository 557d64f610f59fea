using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Printing;

/// <summary>Prints the page of a report as PDF by the Chromium of the machine, which asks nothing of any network and keeps nothing.</summary>
/// <remarks>
/// A profile of its own that is removed after it, no page but the file, and a limit of time. The sandbox of Chromium stays on but for root, under
/// whom it does not start. The two dates that Chromium writes into a PDF are replaced by one fixed date, so that the same report and the same
/// Chromium give the same bytes.
/// </remarks>
internal static class ChromiumPrinter
{
    /// <summary>Names a Chromium where it is not found by itself, or another one.</summary>
    public const string Variable = "SCREENSTATS_CHROMIUM";

    /// <summary>As all files of a report that must hold a date.</summary>
    private const string FixedDate = "20000101000000";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

    /// <summary>The Chromium; asked before long work.</summary>
    /// <exception cref="UsageException">There is none, or the one that is named is not there.</exception>
    public static string Find(RunnerEnvironment environment)
    {
        if (environment.Variable(Variable) is { Length: > 0 } named)
            return File.Exists(named) ? named : throw new UsageException($"--format pdf: {Variable} names a file that is not there; name the Chromium of this machine, or unset it.");
        var found = (environment.Variable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(folder => Names.Select(name => Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name))).FirstOrDefault(File.Exists);
        return found ?? throw new UsageException(
            $"--format pdf needs a Chromium, and none was found. Install one (Debian: apt-get install chromium), name one in {Variable}, or leave the option out and print report.html by any browser.");
    }

    /// <summary>Prints a page.</summary>
    /// <param name="chromium">The program.</param>
    /// <param name="page">The page on the disk.</param>
    /// <param name="target">Where the PDF is put.</param>
    /// <param name="cancellationToken">Ends Chromium.</param>
    /// <returns>Null where it was printed, else why not, in words that follow "report.pdf was not made: ".</returns>
    public static string? Print(string chromium, string page, string target, CancellationToken cancellationToken)
    {
        var room = Directory.CreateTempSubdirectory("screenstats-print");
        try
        {
            var made = Path.Combine(room.FullName, "report.pdf");
            if (Run(chromium, room.FullName, page, made, cancellationToken) is { } fault) return fault;
            if (!File.Exists(made)) return "Chromium ended without one; run it by hand to see why.";
            var bytes = File.ReadAllBytes(made);
            if (!bytes.AsSpan().StartsWith("%PDF-"u8)) return "what Chromium wrote is no PDF.";
            File.WriteAllBytes(target, WithFixedDates(bytes));
            return null;
        }
        finally
        {
            Remove(room);
        }
    }

    /// <summary>The same PDF with the dates of its making replaced by a fixed one of the same length.</summary>
    internal static byte[] WithFixedDates(byte[] pdf)
    {
        var bytes = pdf.ToArray();
        foreach (var name in new[] { "/CreationDate (D:", "/ModDate (D:" })
        {
            var mark = Encoding.ASCII.GetBytes(name);
            for (var at = bytes.AsSpan().IndexOf(mark); at >= 0;)
            {
                var date = bytes.AsSpan(at + mark.Length);
                if (date.Length >= FixedDate.Length && !date[..FixedDate.Length].ContainsAnyExceptInRange((byte)'0', (byte)'9')) Encoding.ASCII.GetBytes(FixedDate).CopyTo(date);
                var next = date.IndexOf(mark);
                at = next < 0 ? -1 : at + mark.Length + next;
            }
        }

        return bytes;
    }

    private static string? Run(string chromium, string room, string page, string made, CancellationToken cancellationToken)
    {
        var start = new ProcessStartInfo(chromium) { RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false, WorkingDirectory = room };
        foreach (var argument in new[]
        {
            "--headless", "--disable-gpu", "--disable-quic", "--no-first-run", "--no-default-browser-check", "--disable-background-networking", "--disable-component-update", "--disable-sync",
            "--disable-extensions", "--disable-dev-shm-usage", "--disable-crash-reporter", "--host-resolver-rules=MAP * ~NOTFOUND", "--user-data-dir=" + Path.Combine(room, "profile"), "--no-pdf-header-footer",
            "--print-to-pdf=" + made,
        }) start.ArgumentList.Add(argument);
        if (!OperatingSystem.IsWindows() && Environment.UserName == "root") start.ArgumentList.Add("--no-sandbox");
        start.ArgumentList.Add(new Uri(page).AbsoluteUri);
        try
        {
            using var process = Process.Start(start)!;
            // Its words are not ours to pass on, and a full pipe would hold it up.
            process.OutputDataReceived += (_, _) => { };
            process.ErrorDataReceived += (_, _) => { };
            process.BeginOutputReadLine();
            process.BeginErrorReadLine();
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
            limit.CancelAfter(Patience);
            try
            {
                process.WaitForExitAsync(limit.Token).GetAwaiter().GetResult();
            }
            catch (OperationCanceledException)
            {
                process.Kill(entireProcessTree: true);
                cancellationToken.ThrowIfCancellationRequested();
                return $"Chromium was not done after {Patience.TotalMinutes.ToString("0", CultureInfo.InvariantCulture)} minutes and was ended.";
            }

            return process.ExitCode == 0 ? null : $"Chromium ended with code {process.ExitCode.ToString(CultureInfo.InvariantCulture)}; run it by hand to see why.";
        }
        catch (Win32Exception)
        {
            return "Chromium could not be started; check that it may be run.";
        }
    }

    // A helper of Chromium may hold a file for a moment longer.
    private static void Remove(DirectoryInfo room)
    {
        try
        {
            room.Delete(recursive: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // What is left is a temporary folder without anything of the program but the PDF.
        }
    }
}
