using System.Runtime.CompilerServices;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>Counts by a packed 64-bit key, by open addressing. No key may be all ones.</summary>
internal sealed class CountTable
{
    private ulong[] keys;
    private long[] counts;
    private int used;

    public CountTable(int capacity = 256)
    {
        var size = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, 2 * capacity));
        keys = new ulong[size];
        counts = new long[size];
    }

    /// <summary>Number of distinct keys, also those whose count has come back to zero.</summary>
    public int Count => used;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(ulong key, long count)
    {
        var stored = key + 1;
        var table = keys;
        var mask = table.Length - 1;
        for (var slot = Slot(stored, mask); ; slot = (slot + 1) & mask)
        {
            if (table[slot] == stored)
            {
                counts[slot] += count;
                return;
            }

            if (table[slot] == 0)
            {
                Insert(slot, stored, count);
                return;
            }
        }
    }

    public void AddAll(CountTable other)
    {
        for (var slot = 0; slot < other.keys.Length; slot++)
        {
            if (other.keys[slot] != 0) Add(other.keys[slot] - 1, other.counts[slot]);
        }
    }

    public long this[ulong key]
    {
        get
        {
            var stored = key + 1;
            var mask = keys.Length - 1;
            for (var slot = Slot(stored, mask); keys[slot] != 0; slot = (slot + 1) & mask)
            {
                if (keys[slot] == stored) return counts[slot];
            }

            return 0;
        }
    }

    /// <summary>The keys whose count is not zero, in no order, with their counts.</summary>
    public (ulong[] Keys, long[] Counts) ToArrays()
    {
        var count = 0;
        for (var slot = 0; slot < keys.Length; slot++)
        {
            if (keys[slot] != 0 && counts[slot] != 0) count++;
        }

        var (foundKeys, foundCounts) = (new ulong[count], new long[count]);
        count = 0;
        for (var slot = 0; slot < keys.Length; slot++)
        {
            if (keys[slot] == 0 || counts[slot] == 0) continue;
            foundKeys[count] = keys[slot] - 1;
            foundCounts[count++] = counts[slot];
        }

        return (foundKeys, foundCounts);
    }

    /// <summary>The keys in ascending order, translated first, equal ones added up, without zeros.</summary>
    public (ulong[] Keys, long[] Counts) ToSorted(Func<ulong, ulong> translate)
    {
        var (found, values) = ToArrays();
        for (var i = 0; i < found.Length; i++) found[i] = translate(found[i]);
        return SortedSums.Of(found, values);
    }

    private static int Slot(ulong stored, int mask)
    {
        var hash = stored * 0x9E3779B97F4A7C15ul;
        return (int)((hash ^ (hash >> 29)) >> 20) & mask;
    }

    private void Insert(int slot, ulong stored, long count)
    {
        keys[slot] = stored;
        counts[slot] = count;
        if (2 * ++used <= keys.Length) return;
        var (oldKeys, oldCounts) = (keys, counts);
        (keys, counts) = (new ulong[2 * oldKeys.Length], new long[2 * oldKeys.Length]);
        var mask = keys.Length - 1;
        for (var i = 0; i < oldKeys.Length; i++)
        {
            if (oldKeys[i] == 0) continue;
            var free = Slot(oldKeys[i], mask);
            while (keys[free] != 0) free = (free + 1) & mask;
            keys[free] = oldKeys[i];
            counts[free] = oldCounts[i];
        }
    }
}
