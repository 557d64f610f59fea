namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>What a row says of whether it was taken because of an outbreak.</summary>
internal enum OutbreakMark
{
    NotRecorded = 0,
    No = 1,
    Yes = 2,
}
