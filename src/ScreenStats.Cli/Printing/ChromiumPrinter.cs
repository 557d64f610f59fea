using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using ScreenStats.Cli.Terminal;
using ScreenStats.Reporting;

namespace ScreenStats.Cli.Printing;

/// <summary>Prints the page of a report as PDF by the Chromium of the machine, which asks nothing of any network and keeps nothing.</summary>
/// <remarks>
/// A profile of its own that is removed once every process is gone, no page but the file, and a limit of time. The sandbox of Chromium stays on but for root, under
/// whom it does not start. The two dates that Chromium writes into a PDF are replaced by one fixed date, so that the same report and the same
/// Chromium give the same bytes.
/// </remarks>
internal static class ChromiumPrinter
{
    /// <summary>Names a Chromium where it is not found by itself, or another one.</summary>
    public const string Variable = "SCREENSTATS_CHROMIUM";

    /// <summary>As all files of a report that must hold a date.</summary>
    private const string FixedDate = "20000101000000";

    /// <summary>A child of a process that was ended may still write for a moment.</summary>
    private const int RemovalTries = 6;

    /// <summary>How long a print may take.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>How long is waited for processes that were ended: what the system ends is gone long before.</summary>
    private static readonly TimeSpan EndingTime = TimeSpan.FromSeconds(20);

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
    /// <param name="time">Tells when <see cref="Patience"/> is over.</param>
    /// <param name="cancellationToken">Ends Chromium.</param>
    /// <returns>Null where it was printed, else why not, in words that follow "report.pdf was not made: ".</returns>
    /// <exception cref="OperationCanceledException">It was cancelled. No process, no temporary file and no half print is left.</exception>
    public static string? Print(string chromium, string page, string target, TimeProvider time, CancellationToken cancellationToken)
    {
        var room = Directory.CreateTempSubdirectory("screenstats-print");
        try
        {
            var made = Path.Combine(room.FullName, "report.pdf");
            if (Run(chromium, room.FullName, page, made, time, cancellationToken) is { } fault) return fault;
            if (!File.Exists(made)) return "Chromium ended without one; run it by hand to see why.";
            var bytes = File.ReadAllBytes(made);
            if (!bytes.AsSpan().StartsWith("%PDF-"u8)) return "what Chromium wrote is no PDF.";
            Put(WithFixedDates(bytes), target);
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

    /// <summary>Writes beside the place and moves it there at once: a full disk leaves no half of a print.</summary>
    private static void Put(byte[] bytes, string target)
    {
        var part = Path.Combine(Path.GetDirectoryName(target)!, Report.PrintPartName);
        try
        {
            File.WriteAllBytes(part, bytes);
            File.Move(part, target, overwrite: true);
        }
        finally
        {
            File.Delete(part);
        }
    }

    private static string? Run(string chromium, string room, string page, string made, TimeProvider time, CancellationToken cancellationToken)
    {
        var start = new ProcessStartInfo(chromium) { RedirectStandardError = true, RedirectStandardOutput = true, UseShellExecute = false, WorkingDirectory = room };
        foreach (var argument in new[]
        {
            "--headless", "--disable-gpu", "--disable-quic", "--no-first-run", "--no-default-browser-check", "--disable-background-networking", "--disable-component-update", "--disable-sync",
            "--disable-extensions", "--disable-dev-shm-usage", "--disable-crash-reporter", "--host-resolver-rules=MAP * ~NOTFOUND", "--user-data-dir=" + Path.Combine(room, "profile"), "--no-pdf-header-footer",
            "--print-to-pdf=" + made,
        }) start.ArgumentList.Add(argument);
        if (!OperatingSystem.IsWindows() && Environment.IsPrivilegedProcess) start.ArgumentList.Add("--no-sandbox");
        start.ArgumentList.Add(new Uri(page).AbsoluteUri);
        try
        {
            using var process = Process.Start(start)!;
            // Its words are not ours to pass on, and a full pipe would hold it up.
            process.OutputDataReceived += (_, _) => { };
            process.ErrorDataReceived += (_, _) => { };
            process.BeginOutputReadLine();
            process.BeginErrorReadLine();
            using var late = new CancellationTokenSource(Patience, time);
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, late.Token);
            try
            {
                process.WaitForExitAsync(limit.Token).GetAwaiter().GetResult();
            }
            catch (OperationCanceledException)
            {
                End(process);
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

    /// <summary>Ends a process with all that it started, and waits until none of them holds its output any more.</summary>
    private static void End(Process process)
    {
        process.Kill(entireProcessTree: true);
        using var enough = new CancellationTokenSource(EndingTime);
        try
        {
            process.WaitForExitAsync(enough.Token).GetAwaiter().GetResult();
        }
        catch (OperationCanceledException)
        {
            // A process that the system itself cannot end now; its room is removed as far as it lets go of it.
        }
    }

    private static void Remove(DirectoryInfo room)
    {
        for (var tried = 1; ; tried++)
        {
            try
            {
                room.Delete(recursive: true);
                return;
            }
            catch (DirectoryNotFoundException) when (!Directory.Exists(room.FullName))
            {
                return;
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                // What is left after that is a folder that its owner alone can enter.
                if (tried == RemovalTries) return;
                Thread.Sleep(50 << tried);
            }
        }
    }
}
