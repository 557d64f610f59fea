namespace ScreenStats.Records.PersonLog.Identifiers;

/// <summary>A set of prints, kept as one bit for each: what it does not hold was never added, what it holds perhaps was.</summary>
internal sealed class PrintFilter
{
    private const int FewestWords = 64;
    private const int MostWords = 1 << 26;

    private ulong[] words = [];

    /// <summary>Empties the set and makes it large enough.</summary>
    /// <param name="prints">Prints that will be added.</param>
    /// <param name="bitsOfPrint">Bits for each: of those that were never added, about one in so many is taken for one that was.</param>
    public void Begin(long prints, int bitsOfPrint)
    {
        var size = (int)Math.Clamp(prints * bitsOfPrint / 64, FewestWords, MostWords);
        if (words.Length < size || words.Length / 2 > size) words = new ulong[size];
        else Array.Clear(words);
    }

    /// <summary>Adds a print; false where the set held it, or one that it cannot tell from it.</summary>
    public bool Add(ulong print)
    {
        ref var word = ref Word(print, out var bit);
        if ((word & bit) != 0) return false;
        word |= bit;
        return true;
    }

    /// <summary>True where the print was added, and rarely where it was not.</summary>
    public bool Holds(ulong print) => (Word(print, out var bit) & bit) != 0;

    // Prints are bits of a good hash, but those of a range share the highest.
    private ref ulong Word(ulong print, out ulong bit)
    {
        var mixed = print * 0x9E3779B97F4A7C15ul;
        bit = 1ul << (int)(mixed & 63);
        return ref words[Math.BigMul((uint)(mixed >> 32), (uint)words.Length) >> 32];
    }
}
