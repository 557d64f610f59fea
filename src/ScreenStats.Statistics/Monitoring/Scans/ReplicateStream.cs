using System.Runtime.CompilerServices;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>Random numbers of one replicate: a stream of its own, so that the result does not depend on who computes what.</summary>
/// <remarks>Source: Steele GL, Lea D, Flood CH, "Fast splittable pseudorandom number generators", OOPSLA 2014 (SplitMix64, from memory).</remarks>
internal struct ReplicateStream
{
    private ulong state;

    public ReplicateStream(ulong seed, int replicate)
    {
        state = seed;
        state = Next() ^ (ulong)replicate;
        state = Next();
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong Next()
    {
        state += 0x9E3779B97F4A7C15UL;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>A whole number below the limit, each with the same chance.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public long Below(long limit)
    {
        var range = (ulong)limit;
        var refuse = (0UL - range) % range;
        while (true)
        {
            var high = Math.BigMul(Next(), range, out var low);
            if (low >= refuse) return (long)high;
        }
    }
}
