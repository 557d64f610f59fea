namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>The names behind the codes of a column, and which of them stand in counted rows.</summary>
/// <param name="Names">Names by code.</param>
/// <param name="Counted">True where a counted row has it.</param>
internal sealed record CountedLevels(string[] Names, bool[] Counted);
