using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>What the scan found out about when a run's follow-up became known.</summary>
/// <param name="Record">Position of the run in the export.</param>
/// <param name="Known">Day on which the change was known.</param>
/// <param name="Before">Follow-up before.</param>
/// <param name="MinutesBefore">Minutes to the specimen that settled it before.</param>
/// <param name="After">Follow-up from then on.</param>
/// <param name="MinutesAfter">Minutes to the specimen that settles it from then on.</param>
internal readonly record struct RunChange(uint Record, int Known, FollowUp Before, int? MinutesBefore, FollowUp After, int? MinutesAfter);
