namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>A positive run that was confirmed or refuted, of a person who is mostly counted elsewhere.</summary>
/// <param name="Person">Hash of the person.</param>
/// <param name="Site">Code of its site.</param>
/// <param name="Lot">Code of its lot.</param>
/// <param name="DayNumber">Its local day.</param>
/// <param name="Confirmed">True where it was confirmed.</param>
internal readonly record struct SettledRun(ulong Person, int Site, int Lot, int DayNumber, bool Confirmed);
