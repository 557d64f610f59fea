using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Text;

namespace ScreenStats.Records.Cache;

/// <summary>Reads what <see cref="PackedWriter"/> wrote; whatever the bytes are, it ends in a value or in a <see cref="DamagedEntryException"/>.</summary>
internal ref struct PackedReader(ReadOnlySpan<byte> bytes)
{
    private readonly ReadOnlySpan<byte> bytes = bytes;
    private int at = 0;

    public readonly bool AtEnd => at == bytes.Length;

    public byte Byte()
    {
        if (at >= bytes.Length) throw new DamagedEntryException();
        return bytes[at++];
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong Unsigned()
    {
        if (at < bytes.Length && bytes[at] < 0x80) return bytes[at++];
        return Longer();
    }

    /// <summary>A number of things, or a position among <paramref name="most"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int Below(int most)
    {
        var value = Unsigned();
        if (value >= (ulong)most) throw new DamagedEntryException();
        return (int)value;
    }

    /// <summary>A number of things, each of which takes at least a byte.</summary>
    public int Count() => Below(bytes.Length - at + 1);

    public long Signed()
    {
        var value = Unsigned();
        return (long)(value >> 1) ^ -(long)(value & 1);
    }

    public int Small()
    {
        var value = Signed();
        return value is >= int.MinValue and <= int.MaxValue ? (int)value : throw new DamagedEntryException();
    }

    public ulong Whole()
    {
        if (bytes.Length - at < 8) throw new DamagedEntryException();
        var value = BinaryPrimitives.ReadUInt64LittleEndian(bytes[at..]);
        at += 8;
        return value;
    }

    public string Text()
    {
        var length = Count();
        var text = Encoding.UTF8.GetString(bytes.Slice(at, length));
        at += length;
        return text;
    }

    private ulong Longer()
    {
        var value = 0ul;
        for (var shift = 0; shift < 64; shift += 7)
        {
            var part = Byte();
            value |= (ulong)(part & 0x7F) << shift;
            if (part < 0x80) return value;
        }

        throw new DamagedEntryException();
    }
}
