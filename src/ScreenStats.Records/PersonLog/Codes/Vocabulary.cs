using System.IO.Hashing;
using System.Text;

namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>
/// Texts and their codes, counted up from 0. Safe for several threads; a reader keeps its own cache in front. There can be millions of
/// kits, so texts are kept as bytes, with twelve to twenty bytes beside each to find it by.
/// </summary>
internal sealed class Vocabulary
{
    private readonly Lock gate = new();
    private byte[] bytes = new byte[256];
    private int[] ends = new int[16];
    private int[] slots = new int[64];
    private int count;
    private string[]? texts;

    /// <param name="first">The text of code 0, where one is reserved.</param>
    public Vocabulary(string? first = null)
    {
        if (first is not null) Code(first);
    }

    public int Count
    {
        get
        {
            lock (gate) return count;
        }
    }

    public string this[int code]
    {
        get
        {
            lock (gate) return code < texts?.Length ? texts[code] : Encoding.UTF8.GetString(Text(code));
        }
    }

    public int Code(string text) => Code(Encoding.UTF8.GetBytes(text));

    /// <summary>The code of a text in UTF-8.</summary>
    public int Code(ReadOnlySpan<byte> text)
    {
        lock (gate)
        {
            var mask = slots.Length - 1;
            var slot = Slot(text) & mask;
            for (; slots[slot] != 0; slot = (slot + 1) & mask)
            {
                if (Text(slots[slot] - 1).SequenceEqual(text)) return slots[slot] - 1;
            }

            return Add(text, slot);
        }
    }

    /// <summary>All texts by code. The array is not to be changed.</summary>
    public string[] ToArray()
    {
        lock (gate)
        {
            if (texts?.Length == count) return texts;
            var all = new string[count];
            for (var code = 0; code < count; code++) all[code] = code < texts?.Length ? texts[code] : Encoding.UTF8.GetString(Text(code));
            return texts = all;
        }
    }

    private static int Slot(ReadOnlySpan<byte> text) => (int)XxHash3.HashToUInt64(text);

    private ReadOnlySpan<byte> Text(int code)
    {
        var start = code == 0 ? 0 : ends[code - 1];
        return bytes.AsSpan(start, ends[code] - start);
    }

    private int Add(ReadOnlySpan<byte> text, int slot)
    {
        var start = count == 0 ? 0 : ends[count - 1];
        if (start + text.Length > bytes.Length) Array.Resize(ref bytes, Math.Max(start + text.Length, bytes.Length + (bytes.Length / 2)));
        if (count == ends.Length) Array.Resize(ref ends, count + (count / 2));
        text.CopyTo(bytes.AsSpan(start));
        ends[count] = start + text.Length;
        slots[slot] = ++count;
        if (2 * count > slots.Length) Grow();
        return count - 1;
    }

    private void Grow()
    {
        slots = new int[2 * slots.Length];
        var mask = slots.Length - 1;
        for (var code = 0; code < count; code++)
        {
            var slot = Slot(Text(code)) & mask;
            while (slots[slot] != 0) slot = (slot + 1) & mask;
            slots[slot] = code + 1;
        }
    }
}
