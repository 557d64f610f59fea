using System.Runtime.InteropServices;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>What is kept of a screen_id: 12 bytes a row, only where the export has the column.</summary>
[StructLayout(LayoutKind.Sequential, Pack = 4)]
internal struct ScreenIdEntry
{
    /// <summary>64-bit hash of the screen_id, never 0.</summary>
    public ulong Id;

    /// <summary>Position of the row in the export.</summary>
    public uint Record;
}
