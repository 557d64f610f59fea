using System.Globalization;
using ScreenStats.Records;

namespace ScreenStats.Cli.Terminal;

/// <summary>One line on a person's screen that says how far reading is; silent everywhere else. Also where a wish to stop is heard.</summary>
internal sealed class ProgressLine(TextWriter errors, RunnerEnvironment environment, TimeProvider time) : IProgress<ReadProgress>, IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);
    private readonly Lock writing = new();
    private long last;
    private bool shown;

    public void Report(ReadProgress value)
    {
        environment.Cancelled.ThrowIfCancellationRequested();
        if (!environment.ErrorIsTerminal || value.Total <= 0) return;
        lock (writing)
        {
            var now = time.GetTimestamp();
            if (shown && time.GetElapsedTime(last, now) < Pause) return;
            last = now;
            shown = true;
            errors.Write(string.Create(CultureInfo.InvariantCulture, $"\rreading {100 * value.Bytes / value.Total,3} %"));
            errors.Flush();
        }
    }

    /// <summary>Wipes the line, so that what follows starts on a clean one.</summary>
    public void Dispose()
    {
        lock (writing)
        {
            if (shown) errors.Write("\r               \r");
            shown = false;
        }
    }
}
