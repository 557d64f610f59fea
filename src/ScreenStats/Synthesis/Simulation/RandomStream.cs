using System.Numerics;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>
/// xoshiro256** 1.0 (Blackman and Vigna 2018), seeded by SplitMix64 (Steele, Lea and Flood 2014) from a seed, a purpose and
/// an index, so that each site draws from a stream of its own. Written out here because its bytes are part of our promise.
/// </summary>
internal sealed class RandomStream
{
    private const ulong GoldenGamma = 0x9E3779B97F4A7C15;
    private ulong first, second, third, fourth;

    public RandomStream(ulong seed, ulong purpose, ulong index)
    {
        var state = seed;
        state = SplitMix(ref state) ^ (purpose * 0xD1B54A32D192ED03);
        state = SplitMix(ref state) ^ (index * 0x8CB92BA72F3D8DD7);
        first = SplitMix(ref state);
        second = SplitMix(ref state);
        third = SplitMix(ref state);
        fourth = SplitMix(ref state);
    }

    private RandomStream(ulong first, ulong second, ulong third, ulong fourth) =>
        (this.first, this.second, this.third, this.fourth) = (first, second, third, fourth);

    /// <summary>A stream in a stated state: for the check against published output.</summary>
    public static RandomStream FromState(ulong first, ulong second, ulong third, ulong fourth) => new(first, second, third, fourth);

    /// <summary>One step of SplitMix64.</summary>
    public static ulong SplitMix(ref ulong state)
    {
        state += GoldenGamma;
        var mixed = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return mixed ^ (mixed >> 31);
    }

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        var result = BitOperations.RotateLeft(second * 5, 7) * 9;
        var shifted = second << 17;
        third ^= first;
        fourth ^= second;
        second ^= third;
        first ^= fourth;
        third ^= shifted;
        fourth = BitOperations.RotateLeft(fourth, 45);
        return result;
    }

    /// <summary>Uniform in [0, 1), a multiple of 2^-53.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>True with this probability; draws nothing where the answer is certain.</summary>
    public bool Chance(double probability) => probability > 0 && (probability >= 1 || Unit() < probability);

    /// <summary>Uniform in 0 ... limit - 1 (multiply and shift: a bias below limit / 2^64).</summary>
    public int Below(int limit) => (int)Math.BigMul(Next(), (ulong)limit, out _);

    /// <summary>Uniform in from ... to, both included.</summary>
    public int Between(int from, int to) => from + Below(to - from + 1);
}
