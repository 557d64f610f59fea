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
    TotalsLine = 14,
    TwoDigitYear = 15,
    MalformedLine = 16,
    NotAnObservation = 17,
    ResultNotFinal = 18,
    ModifiedObservation = 19,
    ContradictoryObservation = 20,
    LooksLikeGovernmentNumber = 21,
    NameTooLong = 22,
    RepeatedSite = 23,
    TwoRegions = 24,
}
