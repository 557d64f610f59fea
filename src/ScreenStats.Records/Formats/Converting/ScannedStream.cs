using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.Formats.Converting;

/// <summary>
/// Unpacks a part of a workbook and stops where it grows beyond what it may be, or where something in it is so long that
/// whoever reads it would have to hold it whole.
/// </summary>
internal sealed class ScannedStream(Stream inner, string name, long most, Action tick) : Stream
{
    /// <summary>Bytes from one &lt; to the next: the longest tag or text.</summary>
    public const int LongestPiece = 1 << 20;

    private long total;
    private long lastTag;
    private bool afterTag;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => total;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var read = inner.Read(buffer);
        Look(buffer[..read]);
        total += read;
        if (total > most) throw new FileFault(ReadingDiagnostics.SuspiciousArchive, $"{name} holds a part that unpacks to more than any workbook of exports. Nothing was read; check where it comes from, or export it as CSV.");
        tick();
        return read;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing) inner.Dispose();
        base.Dispose(disposing);
    }

    private void Look(ReadOnlySpan<byte> bytes)
    {
        if (afterTag && bytes.Length > 0 && bytes[0] == (byte)'!') throw Hostile();
        afterTag = bytes.Length > 0 ? bytes[^1] == (byte)'<' : afterTag;
        for (var at = 0; ;)
        {
            var step = bytes[at..].IndexOf((byte)'<');
            if (step < 0) break;
            at += step;
            if (total + at - lastTag > LongestPiece) throw Hostile();
            lastTag = total + at;
            at++;
            if (at < bytes.Length && bytes[at] == (byte)'!') throw Hostile();
        }

        if (total + bytes.Length - lastTag > LongestPiece) throw Hostile();
    }

    private FileFault Hostile() => new(ReadingDiagnostics.SuspiciousArchive,
        $"{name} holds what no spreadsheet program writes: a text or tag longer than 1 MiB, a comment or a declaration. Nothing was read; save it anew as a workbook, or export it as CSV.");
}
