using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>A counted run of the person at hand.</summary>
/// <param name="Code">Code of its shape.</param>
/// <param name="DayNumber">Its local day.</param>
/// <param name="Seconds">As in <see cref="LogEntry.Seconds"/>.</param>
/// <param name="Record">Position in the export.</param>
/// <param name="FollowUp">What became of it.</param>
internal record struct CountedRun(int Code, int DayNumber, uint Seconds, uint Record, FollowUp FollowUp);
