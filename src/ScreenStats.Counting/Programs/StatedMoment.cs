namespace ScreenStats.Counting.Programs;

/// <summary>A moment as a person stated it: a local time, with an offset from UTC where one was written.</summary>
/// <param name="Local">Local date and time; the end of the day where only a date was written.</param>
/// <param name="Offset">Offset from UTC, or null.</param>
public readonly record struct StatedMoment(DateTime Local, TimeSpan? Offset);
