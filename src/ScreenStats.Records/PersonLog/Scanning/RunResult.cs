using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>What the scan found out about a run that is followed up or audited.</summary>
/// <param name="Record">Position in the export.</param>
/// <param name="Code">Code of its shape.</param>
/// <param name="DayNumber">Its local day.</param>
/// <param name="FollowUp">What became of it.</param>
/// <param name="Minutes">Minutes to the specimen that confirmed or refuted it; null without one.</param>
/// <param name="WholeDays">True where the minutes are whole days.</param>
/// <param name="Stratum">Code of the sampling stratum of the audit.</param>
internal readonly record struct RunResult(
    uint Record, int Code, int DayNumber, FollowUp FollowUp, int? Minutes, bool WholeDays, int Stratum);
