namespace ScreenStats.Records.Deidentification;

/// <summary>What a value that should be a pseudonym looks like.</summary>
internal enum IdentityKind
{
    None = 0,
    Name = 1,
    EmailAddress = 2,
    TelephoneNumber = 3,
    GovernmentNumber = 4,
}
