using System.IO.Hashing;
using System.Runtime.CompilerServices;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// One thread's memory of the texts it has met in a column and what each was taken for, keyed by the bytes in the file:
/// in front of a table that several threads share. Compares the bytes, not just their hash.
/// </summary>
internal sealed class TextCodes
{
    /// <summary>Seed of every hash of a text: fixed, so that the same text has the same hash in every run.</summary>
    public const long Seed = 0x5C2E_E257_A75;

    private readonly Func<string, int> understand;
    private readonly int longestMemory;
    private Slot[] slots = new Slot[64];
    private byte[] texts = new byte[1024];
    private int textLength;

    /// <param name="understand">What a new text is taken for.</param>
    /// <param name="longestMemory">Different texts remembered at most; others are understood afresh each time.</param>
    public TextCodes(Func<string, int> understand, int longestMemory = int.MaxValue)
    {
        this.understand = understand;
        this.longestMemory = longestMemory;
    }

    /// <summary>Number of different texts met.</summary>
    public int Count { get; private set; }

    public static ulong Hash(ReadOnlySpan<byte> text) => XxHash3.HashToUInt64(text, Seed);

    /// <summary>What the text is taken for, and its hash.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int Code(ReadOnlySpan<byte> text, out ulong hash)
    {
        hash = Hash(text);
        var mask = slots.Length - 1;
        for (var at = (int)hash & mask; ; at = (at + 1) & mask)
        {
            ref var slot = ref slots[at];
            if (slot.Times == 0) return Add(text, hash);
            if (slot.Hash != hash || slot.Length != (uint)text.Length || !text.SequenceEqual(texts.AsSpan(slot.Start, text.Length))) continue;
            slot.Times++;
            return slot.Code;
        }
    }

    /// <summary>Every text met, what it was taken for and how often it was met.</summary>
    public IEnumerable<(string Text, int Code, long Times)> Met()
    {
        foreach (var slot in slots)
        {
            if (slot.Times > 0) yield return (System.Text.Encoding.UTF8.GetString(texts, slot.Start, (int)slot.Length), slot.Code, slot.Times);
        }
    }

    private int Add(ReadOnlySpan<byte> text, ulong hash)
    {
        var code = understand(System.Text.Encoding.UTF8.GetString(text));
        if (Count >= longestMemory) return code;
        if (Count * 2 >= slots.Length) Grow();
        if (textLength + text.Length > texts.Length) Array.Resize(ref texts, Math.Max(texts.Length * 2, textLength + text.Length));
        text.CopyTo(texts.AsSpan(textLength));
        Put(new Slot { Hash = hash, Code = code, Start = textLength, Length = (uint)text.Length, Times = 1 });
        textLength += text.Length;
        Count++;
        return code;
    }

    private void Grow()
    {
        var old = slots;
        slots = new Slot[old.Length * 2];
        foreach (var slot in old)
        {
            if (slot.Times > 0) Put(slot);
        }
    }

    private void Put(Slot slot)
    {
        var mask = slots.Length - 1;
        var at = (int)slot.Hash & mask;
        while (slots[at].Times > 0) at = (at + 1) & mask;
        slots[at] = slot;
    }

    private struct Slot
    {
        public ulong Hash;
        public long Times;
        public int Code;
        public int Start;
        public uint Length;
    }
}
