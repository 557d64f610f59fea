namespace ScreenStats.Evaluation.Alarms;

/// <summary>The evidence against a lot at the end of a day on which some was added.</summary>
/// <param name="Key">Lot and day, joined by a vertical bar.</param>
/// <param name="Lot">Name of the lot.</param>
/// <param name="Day">The day.</param>
/// <param name="Found">Refuted positives on the lot so far, of those that could have fallen on others.</param>
/// <param name="Among">Refuted positives so far that could have fallen on it or on others.</param>
/// <param name="Expected">How many of them were to be expected on it.</param>
/// <param name="Evidence">The evidence as a power of ten: 3 is a thousand to one.</param>
/// <param name="Threshold">From where on the alarm is raised, on the same scale.</param>
public sealed record LotEvidencePoint(string Key, string Lot, DateOnly Day, long Found, long Among, double Expected, double Evidence, double Threshold);
