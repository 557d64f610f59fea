using System.IO.Hashing;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// One thread's memory of the texts it has met in a column and what each was taken for, keyed by the bytes in the file:
/// in front of a table that several threads share. Compares the bytes, not just their hash. Texts of up to sixteen bytes
/// stand in the table itself, so that a column with very many of them costs one cache miss, not three.
/// </summary>
internal sealed class TextCodes
{
    /// <summary>Seed of every hash of a text: fixed, so that the same text has the same hash in every run.</summary>
    public const long Seed = 0x5C2E_E257_A75;

    private const int Short = 16;

    private readonly Understand understand;
    private readonly int longestMemory;
    private readonly bool forgets;
    private Slot[] slots = new Slot[64];
    private byte[] texts = new byte[256];
    private int textLength;
    private uint[] timesBefore = [];

    /// <summary>What a new text, in UTF-8, is taken for.</summary>
    public delegate int Understand(ReadOnlySpan<byte> text);

    /// <summary>A memory of the texts met lately, for columns with very many of them: beyond so many, all are forgotten but how often each was met.</summary>
    /// <param name="understand">What a new text is taken for: at least 0, and the same every time.</param>
    /// <param name="most">Different texts remembered at a time.</param>
    public TextCodes(Understand understand, int most)
    {
        this.understand = understand;
        longestMemory = most;
        forgets = true;
    }

    /// <param name="understand">What a new text is taken for.</param>
    /// <param name="longestMemory">Different texts remembered at most; others are understood afresh each time.</param>
    public TextCodes(Func<string, int> understand, int longestMemory = int.MaxValue)
    {
        this.understand = text => understand(System.Text.Encoding.UTF8.GetString(text));
        this.longestMemory = longestMemory;
    }

    /// <summary>Number of different texts remembered.</summary>
    public int Count { get; private set; }

    public static ulong Hash(ReadOnlySpan<byte> text) => XxHash3.HashToUInt64(text, Seed);

    /// <summary>What a text that is not empty is taken for, and its hash.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int Code(ReadOnlySpan<byte> text, out ulong hash)
    {
        if (text.Length > Short) return LongCode(text, out hash);
        Load(text, out var low, out var high);
        hash = HashOf(low, high, text.Length);
        var mask = slots.Length - 1;
        for (var at = (int)hash & mask; ; at = (at + 1) & mask)
        {
            ref var slot = ref slots[at];
            if (slot.Length == 0) return Add(text, hash, low, high);
            if (slot.Low != low || slot.High != high || slot.Length != text.Length) continue;
            slot.Times++;
            return slot.Code;
        }
    }

    /// <summary>Every text met, what it was taken for and how often it was met.</summary>
    public IEnumerable<(string Text, int Code, long Times)> Met()
    {
        foreach (var slot in slots)
        {
            if (slot.Length > 0) yield return (System.Text.Encoding.UTF8.GetString(texts, slot.Start, slot.Length), slot.Code, slot.Times);
        }
    }

    /// <summary>What texts were taken for, and how often each was met; a code may come several times.</summary>
    public IEnumerable<(int Code, long Times)> Codes()
    {
        for (var code = 0; code < timesBefore.Length; code++)
        {
            if (timesBefore[code] > 0) yield return (code, timesBefore[code]);
        }

        foreach (var slot in slots)
        {
            if (slot.Length > 0) yield return (slot.Code, slot.Times);
        }
    }

    private int LongCode(ReadOnlySpan<byte> text, out ulong hash)
    {
        hash = Hash(text);
        var mask = slots.Length - 1;
        for (var at = (int)hash & mask; ; at = (at + 1) & mask)
        {
            ref var slot = ref slots[at];
            if (slot.Length == 0) return Add(text, hash, hash, 0);
            if (slot.Low != hash || slot.Length != text.Length || !text.SequenceEqual(texts.AsSpan(slot.Start, text.Length))) continue;
            slot.Times++;
            return slot.Code;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Load(ReadOnlySpan<byte> text, out ulong low, out ulong high)
    {
        ref var first = ref MemoryMarshal.GetReference(text);
        if (text.Length >= 8)
        {
            low = Unsafe.ReadUnaligned<ulong>(ref first);
            high = Unsafe.ReadUnaligned<ulong>(ref Unsafe.Add(ref first, text.Length - 8));
        }
        else if (text.Length >= 4)
        {
            low = Unsafe.ReadUnaligned<uint>(ref first);
            high = Unsafe.ReadUnaligned<uint>(ref Unsafe.Add(ref first, text.Length - 4));
        }
        else
        {
            low = first;
            high = Unsafe.Add(ref first, text.Length >> 1) | ((ulong)Unsafe.Add(ref first, text.Length - 1) << 8);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong HashOf(ulong low, ulong high, int length)
    {
        var mixed = (low * 0x9E37_79B9_7F4A_7C15UL) ^ (System.Numerics.BitOperations.RotateLeft(high ^ (ulong)length, 32) * 0xD1B5_4A32_D192_ED03UL);
        mixed = (mixed ^ (mixed >> 32)) * 0xA24B_AED4_963E_E407UL;
        return mixed ^ (mixed >> 29);
    }

    private int Add(ReadOnlySpan<byte> text, ulong hash, ulong low, ulong high)
    {
        var code = understand(text);
        if (Count >= longestMemory)
        {
            if (!forgets) return code;
            Forget();
        }

        if (Count * 2 >= slots.Length) Grow();
        if (textLength + text.Length > texts.Length) Array.Resize(ref texts, Math.Max(texts.Length * 2, textLength + text.Length));
        text.CopyTo(texts.AsSpan(textLength));
        Put(new Slot { Low = low, High = high, Code = code, Start = textLength, Length = text.Length, Times = 1 }, hash);
        textLength += text.Length;
        Count++;
        return code;
    }

    private void Forget()
    {
        foreach (ref readonly var slot in slots.AsSpan())
        {
            if (slot.Length == 0) continue;
            if (slot.Code >= timesBefore.Length) Array.Resize(ref timesBefore, slot.Code + (slot.Code / 2) + 1);
            timesBefore[slot.Code] += slot.Times;
        }

        Array.Clear(slots);
        (textLength, Count) = (0, 0);
    }

    private void Grow()
    {
        var old = slots;
        slots = new Slot[old.Length * 2];
        foreach (var slot in old)
        {
            if (slot.Length > 0) Put(slot, slot.Length > Short ? slot.Low : HashOf(slot.Low, slot.High, slot.Length));
        }
    }

    private void Put(in Slot slot, ulong hash)
    {
        var mask = slots.Length - 1;
        var at = (int)hash & mask;
        while (slots[at].Length > 0) at = (at + 1) & mask;
        slots[at] = slot;
    }

    private struct Slot
    {
        public ulong Low;
        public ulong High;
        public int Code;
        public int Start;
        public int Length;
        public uint Times;
    }
}
