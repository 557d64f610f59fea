using System.Buffers.Binary;
using System.IO.Hashing;

namespace ScreenStats.Records.Cache;

/// <summary>
/// An entry while it is written, under a name that is no entry's. A fault of the disk ends the writing, not the reading it is written beside.
/// Safe for several threads.
/// </summary>
internal sealed class EntryWriter : IDisposable
{
    private readonly Lock gate = new();
    private readonly XxHash128 checksum = new();
    private readonly Action<Exception> failed;
    private Stream? stream;
    private long length;
    private (long Offset, int Length) tail;

    /// <param name="path">Where it is written.</param>
    /// <param name="open">Opens that.</param>
    /// <param name="failed">Told of a fault of the disk, once.</param>
    public EntryWriter(string path, Func<string, Stream> open, Action<Exception> failed)
    {
        Path = path;
        this.failed = failed;
        Try(() => stream = open(path));
        Append(EntryLayout.Letters);
    }

    public string Path { get; }

    /// <summary>False once it could not be written.</summary>
    public bool Whole => stream is not null;

    /// <summary>Bytes of all entries together that have been written so far.</summary>
    public long Length => length;

    /// <summary>Writes a piece; its place in the file.</summary>
    public long Append(ReadOnlySpan<byte> bytes)
    {
        lock (gate)
        {
            var at = length;
            if (stream is null) return at;
            try
            {
                stream.Write(bytes);
                checksum.Append(bytes);
                length += bytes.Length;
            }
            catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
            {
                Fail(exception);
            }

            return at;
        }
    }

    /// <summary>Writes the tail, after all frames.</summary>
    public void AppendTail(ReadOnlySpan<byte> bytes) => tail = (Append(bytes), bytes.Length);

    /// <summary>Writes what makes it an entry. False where it could not be written.</summary>
    public bool Complete(byte[] understanding, string content)
    {
        var footer = new byte[EntryLayout.Footer];
        BinaryPrimitives.WriteInt64LittleEndian(footer, tail.Offset);
        BinaryPrimitives.WriteInt64LittleEndian(footer.AsSpan(8), tail.Length);
        understanding.CopyTo(footer, 16);
        Convert.FromHexString(content).CopyTo(footer, 16 + EntryLayout.Hash);
        checksum.Append(footer.AsSpan(0, footer.Length - EntryLayout.Checksum));
        BinaryPrimitives.WriteUInt128LittleEndian(footer.AsSpan(footer.Length - EntryLayout.Checksum), checksum.GetCurrentHashAsUInt128());
        Append(footer);
        Try(() => stream?.Dispose());
        var whole = Whole;
        stream = null;
        return whole;
    }

    /// <summary>Removes what was not completed.</summary>
    public void Dispose()
    {
        var open = stream;
        stream = null;
        try
        {
            open?.Dispose();
            File.Delete(Path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // A later run removes it.
        }
    }

    private void Try(Action write)
    {
        try
        {
            write();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            Fail(exception);
        }
    }

    private void Fail(Exception exception)
    {
        var open = stream;
        stream = null;
        try
        {
            open?.Dispose();
        }
        catch (Exception other) when (other is IOException or UnauthorizedAccessException)
        {
            // Closing writes what is left to be written, which fails as that did.
        }

        failed(exception);
    }
}
