namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>The names behind the codes of a column, and which of them stand in counted rows.</summary>
/// <param name="Names">Names by code: there can be very many kits, so each is made when it is asked for.</param>
/// <param name="Counted">True where a counted row has it.</param>
internal sealed record CountedLevels(Vocabulary Names, bool[] Counted);
