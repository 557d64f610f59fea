namespace ScreenStats.Records.Deidentification;

/// <summary>
/// A sample of the different values of a column: those with the smallest hashes. It depends on the values alone, not on how often
/// or in which order they come, nor on how many threads read them, and has a fixed size.
/// </summary>
internal sealed class ValueSample
{
    /// <summary>Different values looked at, at most.</summary>
    public const int Most = 256;

    private readonly ulong[] hashes = new ulong[Most];
    private readonly ValueTraits[] traits = new ValueTraits[Most];

    /// <summary>Different values looked at.</summary>
    public int Count { get; private set; }

    /// <summary>A value with a hash of at least this cannot be in the sample.</summary>
    public ulong Limit { get; private set; } = ulong.MaxValue;

    public ReadOnlySpan<ulong> Hashes => hashes.AsSpan(0, Count);

    public ReadOnlySpan<ValueTraits> Traits => traits.AsSpan(0, Count);

    /// <summary>Takes a value that is not blank.</summary>
    public void Take(ulong hash, ReadOnlySpan<byte> value)
    {
        if (hash >= Limit || hashes.AsSpan(0, Count).BinarySearch(hash) >= 0) return;
        Put(hash, ValueTraits.Of(value));
    }

    /// <summary>Adds a value of which only the looks are known.</summary>
    public void Add(ulong hash, ValueTraits of)
    {
        if (hash < Limit && hashes.AsSpan(0, Count).BinarySearch(hash) < 0) Put(hash, of);
    }

    /// <summary>Adds what another thread, or another file, saw.</summary>
    public void Add(ValueSample other)
    {
        for (var i = 0; i < other.Count; i++)
        {
            Add(other.hashes[i], other.traits[i]);
        }
    }

    private void Put(ulong hash, ValueTraits of)
    {
        var at = ~hashes.AsSpan(0, Count).BinarySearch(hash);
        var end = Math.Min(Count, Most - 1);
        hashes.AsSpan(at, end - at).CopyTo(hashes.AsSpan(at + 1));
        traits.AsSpan(at, end - at).CopyTo(traits.AsSpan(at + 1));
        hashes[at] = hash;
        traits[at] = of;
        if (Count < Most) Count++;
        if (Count == Most) Limit = hashes[Most - 1];
    }
}
