using Microsoft.Win32.SafeHandles;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>
/// A temporary file with rows that did not fit into memory. One thread writes it to its end; afterwards any number may read. What the
/// disk says of it is told as what it is: not as a fault of the exports.
/// </summary>
internal sealed class SpillFile(SpillFolder folder, FileStream stream) : IDisposable
{
    private readonly SafeFileHandle handle = stream.SafeFileHandle;

    /// <summary>Bytes written.</summary>
    public long Length { get; private set; }

    /// <exception cref="UnusableDataException">There is no room for them.</exception>
    public void Append(ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty) return;
        folder.Take(bytes.Length);
        try
        {
            RandomAccess.Write(handle, bytes, Length);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw folder.Fault("is full, or cannot be written to");
        }

        Length += bytes.Length;
    }

    public void Read(Span<byte> bytes, long from)
    {
        try
        {
            while (bytes.Length > 0)
            {
                var read = RandomAccess.Read(handle, bytes, from);
                if (read == 0) throw new EndOfStreamException();
                bytes = bytes[read..];
                from += read;
            }
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw folder.Fault("cannot be read");
        }
    }

    public void Dispose() => stream.Dispose();
}
