namespace ScreenStats.Records;

/// <summary>What one word was taken for.</summary>
/// <param name="Word">The word as it stands in the files.</param>
/// <param name="TakenFor">The canonical word; empty where it says that nothing is recorded.</param>
/// <param name="Rows">Rows that hold it.</param>
public sealed record WordUnderstanding(string Word, string TakenFor, long Rows);
