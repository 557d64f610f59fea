namespace ScreenStats.Records;

/// <summary>One site, lot or kit that was met.</summary>
/// <param name="Name">Its name as it stands in the files.</param>
/// <param name="Rows">Rows that hold it.</param>
public sealed record LevelUnderstanding(string Name, long Rows);
