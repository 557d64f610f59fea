using System.Runtime.CompilerServices;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>Sorts the slots of many events: by their lower digits first, then by the upper ones. Sorted by comparison, they were most of the time of simulated programs.</summary>
/// <param name="most">Slots at most.</param>
internal sealed class SlotSort(int most)
{
    private const int DigitBits = 11;

    // Below that a sort by comparison is as fast.
    private const int Few = 512;

    private readonly int[] counts = new int[1 << DigitBits];
    private int[] from = new int[most];
    private int[] to = new int[most];

    /// <summary>Room for slots to sort.</summary>
    public int[] Slots => from;

    /// <summary>Sorts the first slots of <see cref="Slots"/>, which lie below a number.</summary>
    /// <returns>The sorted slots; they are gone once <see cref="Slots"/> are set anew.</returns>
    // Compiled for good at once: a run is too short for the compiler to come back to it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public ReadOnlySpan<int> Sort(int count, int below)
    {
        if (count < Few)
        {
            Array.Sort(from, 0, count);
            return from.AsSpan(0, count);
        }

        for (var shift = 0; (below - 1) >> shift > 0; shift += DigitBits)
        {
            Array.Clear(counts);
            for (var i = 0; i < count; i++) counts[(from[i] >> shift) & ((1 << DigitBits) - 1)]++;
            var before = 0;
            for (var digit = 0; digit < counts.Length; digit++) (counts[digit], before) = (before, before + counts[digit]);
            for (var i = 0; i < count; i++) to[counts[(from[i] >> shift) & ((1 << DigitBits) - 1)]++] = from[i];
            (from, to) = (to, from);
        }

        return from.AsSpan(0, count);
    }
}
