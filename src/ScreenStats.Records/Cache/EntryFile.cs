using System.Buffers.Binary;
using System.IO.Hashing;
using Microsoft.Win32.SafeHandles;

namespace ScreenStats.Records.Cache;

/// <summary>An entry that is whole: every byte of it was held against its checksum before any is used.</summary>
internal sealed class EntryFile : IDisposable
{
    private readonly SafeFileHandle handle;
    private readonly long end;
    private byte[] tail;

    private EntryFile(SafeFileHandle handle, long end, byte[] tail)
    {
        this.handle = handle;
        this.end = end;
        this.tail = tail;
    }

    /// <summary>What stands behind the frames; once.</summary>
    public byte[] TakeTail()
    {
        var taken = tail;
        tail = [];
        return taken;
    }

    /// <summary>Opens an entry.</summary>
    /// <exception cref="DamagedEntryException">It is not what was written, or the entry of something else.</exception>
    /// <exception cref="IOException">It is not there any more, or cannot be read.</exception>
    public static EntryFile Open(string path, byte[] understanding, string content, CancellationToken cancelled)
    {
        var handle = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete, FileOptions.SequentialScan);
        try
        {
            var length = RandomAccess.GetLength(handle);
            if (length < EntryLayout.Letters.Length + EntryLayout.Footer) throw new DamagedEntryException();
            var footer = new byte[EntryLayout.Footer];
            Read(handle, footer, length - footer.Length);
            if (Checksum(handle, length - EntryLayout.Checksum, cancelled) != BinaryPrimitives.ReadUInt128LittleEndian(footer.AsSpan(footer.Length - EntryLayout.Checksum))) throw new DamagedEntryException();
            if (!footer.AsSpan(16, EntryLayout.Hash).SequenceEqual(understanding)
                || !footer.AsSpan(16 + EntryLayout.Hash, EntryLayout.Hash).SequenceEqual(Convert.FromHexString(content))) throw new DamagedEntryException();
            var offset = BinaryPrimitives.ReadInt64LittleEndian(footer);
            var size = BinaryPrimitives.ReadInt64LittleEndian(footer.AsSpan(8));
            if (offset < EntryLayout.Letters.Length || size is < 0 or > int.MaxValue || offset + size != length - footer.Length) throw new DamagedEntryException();
            var tail = new byte[size];
            Read(handle, tail, offset);
            return new EntryFile(handle, offset, tail);
        }
        catch
        {
            handle.Dispose();
            throw;
        }
    }

    /// <summary>Reads a frame.</summary>
    public void Read(Span<byte> to, long offset)
    {
        if (offset < EntryLayout.Letters.Length || offset + to.Length > end) throw new DamagedEntryException();
        Read(handle, to, offset);
    }

    public void Dispose() => handle.Dispose();

    private static UInt128 Checksum(SafeFileHandle handle, long length, CancellationToken cancelled)
    {
        var checksum = new XxHash128();
        var buffer = new byte[1 << 18];
        for (long offset = 0; offset < length;)
        {
            cancelled.ThrowIfCancellationRequested();
            var part = buffer.AsSpan(0, (int)Math.Min(buffer.Length, length - offset));
            Read(handle, part, offset);
            checksum.Append(part);
            offset += part.Length;
        }

        return checksum.GetCurrentHashAsUInt128();
    }

    private static void Read(SafeFileHandle handle, Span<byte> to, long offset)
    {
        while (to.Length > 0)
        {
            var read = RandomAccess.Read(handle, to, offset);
            if (read == 0) throw new DamagedEntryException();
            to = to[read..];
            offset += read;
        }
    }
}
