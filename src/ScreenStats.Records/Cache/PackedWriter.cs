using System.Buffers.Binary;
using System.Runtime.CompilerServices;
using System.Text;

namespace ScreenStats.Records.Cache;

/// <summary>Numbers and texts one behind the other in as few bytes as they need: seven bits a byte, the lowest first.</summary>
internal sealed class PackedWriter(int capacity = 256)
{
    private const int Longest = 10;

    private byte[] bytes = new byte[Math.Max(capacity, Longest)];

    public int Length { get; private set; }

    public ReadOnlySpan<byte> Written => bytes.AsSpan(0, Length);

    public void Clear() => Length = 0;

    public void Byte(byte value)
    {
        if (Length == bytes.Length) Grow(1);
        bytes[Length++] = value;
    }

    /// <summary>A number that is mostly small.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Unsigned(ulong value)
    {
        if (Length + Longest > bytes.Length) Grow(Longest);
        while (value >= 0x80)
        {
            bytes[Length++] = (byte)(value | 0x80);
            value >>= 7;
        }

        bytes[Length++] = (byte)value;
    }

    public void Count(int value) => Unsigned((uint)value);

    /// <summary>A number that is mostly small, of either sign.</summary>
    public void Signed(long value) => Unsigned((ulong)((value << 1) ^ (value >> 63)));

    /// <summary>A number of which any is as likely as another: eight bytes.</summary>
    public void Whole(ulong value)
    {
        if (Length + 8 > bytes.Length) Grow(8);
        BinaryPrimitives.WriteUInt64LittleEndian(bytes.AsSpan(Length), value);
        Length += 8;
    }

    public void Text(string text)
    {
        var length = Encoding.UTF8.GetByteCount(text);
        Count(length);
        if (Length + length > bytes.Length) Grow(length);
        Length += Encoding.UTF8.GetBytes(text, bytes.AsSpan(Length));
    }

    public void Bytes(ReadOnlySpan<byte> value)
    {
        if (Length + value.Length > bytes.Length) Grow(value.Length);
        value.CopyTo(bytes.AsSpan(Length));
        Length += value.Length;
    }

    private void Grow(int room) => Array.Resize(ref bytes, checked(Math.Max(2 * bytes.Length, Length + room)));
}
