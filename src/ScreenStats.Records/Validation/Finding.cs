namespace ScreenStats.Records.Validation;

/// <summary>What can be found in a row.</summary>
internal enum Finding
{
    MalformedRow = 0,
    TooManyFields = 1,
    BlankRow = 2,
    MissingValue = 3,
    UnreadableDate = 4,
    UnknownResult = 5,
    UnreadableNumber = 6,
    UnreadableValue = 7,
    ResultAgainstLines = 8,
    WithOffset = 9,
    WithoutOffset = 10,
    LooksLikeName = 11,
    LooksLikeEmailAddress = 12,
    LooksLikeTelephoneNumber = 13,
}
