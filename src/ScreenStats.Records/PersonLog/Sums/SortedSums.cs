namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>Sorts packed keys with their counts and adds up equal keys.</summary>
internal static class SortedSums
{
    private const int DigitBits = 11;
    private const int Digits = 1 << DigitBits;

    /// <summary>Ascending keys, each once, without those whose sum is zero. The arrays passed in are used up.</summary>
    public static (ulong[] Keys, long[] Counts) Of(ulong[] keys, long[] counts)
    {
        if (keys.Length < 512) Array.Sort(keys, counts);
        else (keys, counts) = Radix(keys, counts);
        var kept = 0;
        for (var i = 0; i < keys.Length;)
        {
            var (key, sum) = (keys[i], 0L);
            for (; i < keys.Length && keys[i] == key; i++) sum += counts[i];
            if (sum == 0) continue;
            (keys[kept], counts[kept]) = (key, sum);
            kept++;
        }

        Array.Resize(ref keys, kept);
        Array.Resize(ref counts, kept);
        return (keys, counts);
    }

    // From the lowest digit up; digits that all keys share are left out.
    private static (ulong[] Keys, long[] Counts) Radix(ulong[] keys, long[] counts)
    {
        var (all, any) = (ulong.MaxValue, 0ul);
        foreach (var key in keys) (all, any) = (all & key, any | key);
        var differing = all ^ any;
        var (nextKeys, nextCounts) = (new ulong[keys.Length], new long[keys.Length]);
        var starts = new int[Digits];
        for (var shift = 0; shift < 64; shift += DigitBits)
        {
            if (((differing >> shift) & (Digits - 1)) == 0) continue;
            Array.Clear(starts);
            foreach (var key in keys) starts[(int)(key >> shift) & (Digits - 1)]++;
            var sum = 0;
            for (var digit = 0; digit < Digits; digit++) (starts[digit], sum) = (sum, sum + starts[digit]);
            for (var i = 0; i < keys.Length; i++)
            {
                var at = starts[(int)(keys[i] >> shift) & (Digits - 1)]++;
                nextKeys[at] = keys[i];
                nextCounts[at] = counts[i];
            }

            (keys, nextKeys) = (nextKeys, keys);
            (counts, nextCounts) = (nextCounts, counts);
        }

        return (keys, counts);
    }
}
