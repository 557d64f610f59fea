namespace ScreenStats.Records;

/// <summary>How far reading is.</summary>
/// <param name="Bytes">Bytes read so far, of all exports.</param>
/// <param name="Total">Bytes of all exports.</param>
public readonly record struct ReadProgress(long Bytes, long Total);
