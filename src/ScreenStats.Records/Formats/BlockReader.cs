using System.Text;
using Microsoft.Win32.SafeHandles;

namespace ScreenStats.Records.Formats;

/// <summary>
/// Cuts a file into blocks that end where a record ends, so that several threads can split records at once. Finding the
/// end needs the quotes before it: they are followed by the same rule as in <see cref="RecordSplitter"/>.
/// </summary>
internal sealed class BlockReader : IDisposable
{
    /// <summary>The longest record that is read.</summary>
    public const int LongestRecord = 1 << 20;

    /// <summary>Bytes of a usual block: small enough for a core's own cache, large enough that a read is cheap.</summary>
    public const int UsualLength = 1 << 18;

    private readonly SafeFileHandle handle;
    private readonly TextEncoding encoding;
    private readonly byte delimiter;
    private readonly int usualLength;
    private readonly SeenBytes? seen;
    private readonly Stream? transcoded;
    private readonly List<(int Open, int Close)> quoted = [];
    private byte[] carry = [];
    private int carried;
    private long sourceOffset;
    private long readOffset;
    private long utf8Offset;
    private int number;
    private bool atEnd;

    public BlockReader(string path, TextEncoding encoding, byte delimiter, int usualLength = UsualLength, SeenBytes? seen = null)
    {
        this.seen = seen;
        this.encoding = encoding;
        this.delimiter = delimiter;
        this.usualLength = usualLength;
        handle = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.Read, FileOptions.SequentialScan);
        sourceOffset = readOffset = encoding.MarkLength();
        if (encoding.IsUtf8()) return;
        var stream = new SeenStream(handle, seen);
        stream.Position = sourceOffset;
        transcoded = Encoding.CreateTranscodingStream(stream, encoding.Decoder(), new UTF8Encoding(false));
    }

    /// <summary>Bytes of UTF-8 before the block that comes next.</summary>
    public long Position => utf8Offset;

    /// <summary>Fills the block with the next whole records. False at the end of the file.</summary>
    /// <exception cref="BrokenFileException">A quote is never closed, or a record is too long.</exception>
    public bool Next(Block block)
    {
        if (block.Buffer.Length < carried + usualLength) block.Buffer = new byte[carried + usualLength];
        carry.AsSpan(0, carried).CopyTo(block.Buffer);
        var length = carried;
        carried = 0;
        while (true)
        {
            length = Fill(block.Buffer, length);
            if (length == 0) return false;
            var end = EndOfLastRecord(block.Buffer.AsSpan(0, length), (byte)'\n', out var openQuote);
            // No LF in all of it: perhaps a CR ends its lines. Where it does not, a quote keeps it from being taken for one.
            if (end == 0 && !atEnd) end = EndOfLastRecord(block.Buffer.AsSpan(0, length), (byte)'\r', out openQuote);
            if (atEnd && openQuote >= 0) throw new BrokenFileException(BrokenFile.UnclosedQuote, utf8Offset + openQuote);
            if (atEnd) end = length;
            if (end > 0)
            {
                Deliver(block, end, length);
                return true;
            }

            if (length > LongestRecord)
            {
                if (openQuote >= 0) throw new BrokenFileException(BrokenFile.UnclosedQuote, utf8Offset + openQuote);
                throw new BrokenFileException(BrokenFile.RecordTooLong, utf8Offset);
            }

            Array.Resize(ref block.Buffer, Math.Max(block.Buffer.Length * 2, LongestRecord / 4));
        }
    }

    public void Dispose()
    {
        transcoded?.Dispose();
        handle.Dispose();
    }

    private void Deliver(Block block, int end, int length)
    {
        carried = length - end;
        if (carry.Length < carried) carry = new byte[Math.Max(carried, usualLength)];
        block.Buffer.AsSpan(end, carried).CopyTo(carry);
        block.Length = end;
        block.Number = number++;
        block.SourceOffset = sourceOffset;
        block.SourceLength = encoding.SourceLength(block.Buffer.AsSpan(0, end));
        sourceOffset += block.SourceLength;
        utf8Offset += end;
    }

    private int Fill(byte[] buffer, int length)
    {
        while (length < buffer.Length && !atEnd)
        {
            var read = transcoded is null
                ? RandomAccess.Read(handle, buffer.AsSpan(length), readOffset)
                : transcoded.Read(buffer, length, buffer.Length - length);
            if (transcoded is null) seen?.Add(buffer.AsSpan(length, read));
            readOffset += read;
            length += read;
            if (read == 0) atEnd = true;
        }

        return length;
    }

    /// <summary>Offset behind the last line end of a kind that is outside quotes; 0 where there is none.</summary>
    private int EndOfLastRecord(ReadOnlySpan<byte> bytes, byte lineEnd, out int openQuote)
    {
        openQuote = -1;
        // A CR that is the last byte may belong to a LF that has not been read.
        if (lineEnd == (byte)'\r' && bytes[^1] == lineEnd) bytes = bytes[..^1];
        if (!bytes.Contains((byte)'"')) return bytes.LastIndexOf(lineEnd) + 1;
        quoted.Clear();
        var at = 0;
        while (true)
        {
            var step = bytes[at..].IndexOf((byte)'"');
            if (step < 0) break;
            at += step;
            if (openQuote < 0)
            {
                if (at == 0 || bytes[at - 1] == delimiter || bytes[at - 1] is (byte)'\n' or (byte)'\r') openQuote = at;
                at++;
            }
            else if (at + 1 < bytes.Length)
            {
                if (bytes[at + 1] == (byte)'"')
                {
                    at += 2;
                    continue;
                }

                quoted.Add((openQuote, at));
                openQuote = -1;
                at++;
            }
            else
            {
                // The last byte of what was read: what follows decides whether it closes, unless nothing follows.
                if (atEnd) openQuote = -1;
                break;
            }
        }

        var limit = openQuote >= 0 ? openQuote : bytes.Length;
        for (var region = quoted.Count - 1; ; region--)
        {
            var end = bytes[..limit].LastIndexOf(lineEnd) + 1;
            while (region >= 0 && quoted[region].Open >= end) region--;
            if (region < 0 || quoted[region].Close < end) return end;
            limit = quoted[region].Open;
        }
    }

    /// <summary>A file whose bytes are noted before they are decoded.</summary>
    private sealed class SeenStream(SafeFileHandle handle, SeenBytes? seen) : FileStream(handle, FileAccess.Read, 1 << 16)
    {
        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = base.Read(buffer, offset, count);
            seen?.Add(buffer.AsSpan(offset, read));
            return read;
        }

        // What the base class makes of a span leads to the other method or not: by way of an array of our own it does so once.
        public override int Read(Span<byte> buffer)
        {
            var bytes = new byte[buffer.Length];
            var read = Read(bytes, 0, bytes.Length);
            bytes.AsSpan(0, read).CopyTo(buffer);
            return read;
        }
    }
}
