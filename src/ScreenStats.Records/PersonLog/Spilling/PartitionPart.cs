using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>The people of a partition whose next bits of the mixed hash have one value; all of them without such bits.</summary>
/// <param name="Partition">The partition.</param>
/// <param name="Bits">Number of bits beyond those of the partition.</param>
/// <param name="Value">Their value.</param>
internal readonly record struct PartitionPart(int Partition, int Bits, int Value)
{
    /// <summary>Bits by which a part that is too large is split.</summary>
    public const int SplitBits = 4;

    /// <summary>Beyond so many bits a part is hardly more than one person.</summary>
    public const int MostBits = 24;

    public bool Holds(ulong person) => (int)(PartitionedBuffer<LogEntry>.Mixed(person) << 8 >> (64 - Bits)) == Value;

    /// <summary>The parts of this part.</summary>
    public PartitionPart Part(int number) => new(Partition, Bits + SplitBits, (Value << SplitBits) | number);
}
