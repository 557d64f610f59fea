using System.Globalization;
using ScreenStats.Records;
using ScreenStats.Reporting;

namespace ScreenStats.Cli.Terminal;

/// <summary>
/// Says on a person's screen how far the work is; silent everywhere else. One line that is written over; on a terminal that cannot do
/// that (TERM=dumb) plain lines, one every few seconds. Also where a wish to stop is heard.
/// </summary>
internal sealed class ProgressLine(TextWriter errors, RunnerEnvironment environment, TimeProvider time)
    : IProgress<ReadProgress>, IProgress<string>, IProgress<WriteProgress>
{
    /// <summary>Between two changes of the line.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    /// <summary>Between two plain lines.</summary>
    public static readonly TimeSpan LongPause = TimeSpan.FromSeconds(5);

    private readonly Lock writing = new();
    private readonly long started = time.GetTimestamp();
    private long? last;
    private int shown;

    /// <summary>How far reading is.</summary>
    public void Report(ReadProgress value)
    {
        environment.Cancelled.ThrowIfCancellationRequested();
        if (value.Total > 0) Show("reading", value.Bytes, value.Total);
    }

    /// <summary>What is evaluated now.</summary>
    public void Report(string value)
    {
        environment.Cancelled.ThrowIfCancellationRequested();
        Show("evaluating: " + value, anew: true);
    }

    /// <summary>How far the report is.</summary>
    public void Report(WriteProgress value)
    {
        environment.Cancelled.ThrowIfCancellationRequested();
        if (value.Total > 0) Show("writing", value.Done, value.Total);
    }

    /// <summary>Does a part of the work; afterwards the line is wiped, so that what follows starts on a clean one.</summary>
    public T During<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        finally
        {
            Wipe();
        }
    }

    private void Wipe()
    {
        lock (writing)
        {
            if (shown > 0) errors.Write("\r" + new string(' ', shown) + "\r");
            shown = 0;
            if (!environment.Dumb) last = null;
        }
    }

    private void Show(string what, long done, long total) =>
        Show(string.Create(CultureInfo.InvariantCulture, $"{what} {Math.Min(100, 100 * done / total),3} %"), anew: false);

    // A change of what is done is shown at once on a line that is written over: the part before it may be long, and over.
    private void Show(string text, bool anew)
    {
        if (!environment.ErrorIsTerminal) return;
        lock (writing)
        {
            var now = time.GetTimestamp();
            if (environment.Dumb)
            {
                if (time.GetElapsedTime(last ?? started, now) < LongPause) return;
                last = now;
                errors.Write(text + "\n");
            }
            else
            {
                if (!anew && last is { } before && time.GetElapsedTime(before, now) < Pause) return;
                last = now;
                errors.Write("\r" + text.PadRight(shown));
                shown = Math.Max(shown, text.Length);
            }

            errors.Flush();
        }
    }
}
