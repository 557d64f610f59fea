using ScreenStats.Counting.Cubes;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>A positive run that was repeated on the same day.</summary>
/// <param name="Code">Shape of the positive run.</param>
/// <param name="DayNumber">Local day of both.</param>
/// <param name="FollowUp">What became of the positive run.</param>
/// <param name="RetestCode">Shape of the retest.</param>
internal readonly record struct FoundRetest(int Code, int DayNumber, FollowUp FollowUp, int RetestCode);
