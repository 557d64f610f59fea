namespace ScreenStats.Synthesis.Simulation;

/// <summary>What is wrong with one row of an export.</summary>
[Flags]
internal enum RowFaults
{
    None = 0,
    UnreadableDate = 1,
    UnknownWord = 2,
    BlankResult = 4,
    NoLot = 8,
    NoKit = 16,
    NoOperator = 32,
    BlankSymptoms = 64,
    UnreadableReadTime = 128,
    Capitals = 256,

    /// <summary>Any that makes a reader set the row aside.</summary>
    SetAside = UnreadableDate | UnknownWord | BlankResult,
}
