using System.Runtime.InteropServices;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>What the log keeps of a row: 20 bytes.</summary>
[StructLayout(LayoutKind.Sequential, Pack = 4)]
internal struct LogEntry
{
    /// <summary>64-bit hash of the person.</summary>
    public ulong Person;

    /// <summary>Seconds since 1970-01-01 on the rows' scale.</summary>
    public uint Seconds;

    /// <summary>Position of the row in the export.</summary>
    public uint Record;

    /// <summary>Code of the row's shape (24 bits) and the lowest 8 bits of the hash of its meaning.</summary>
    public uint CodeAndMeaning;

    public readonly int Code => (int)(CodeAndMeaning >> 8);

    public readonly byte Meaning => (byte)CodeAndMeaning;

    /// <summary>Time, then position: the order in which a person's rows are looked at.</summary>
    public readonly ulong Order => ((ulong)Seconds << 32) | Record;
}
