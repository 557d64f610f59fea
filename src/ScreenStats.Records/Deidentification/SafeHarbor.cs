namespace ScreenStats.Records.Deidentification;

/// <summary>The 18 identifiers that the Safe Harbor method has removed: 45 CFR 164.514(b)(2)(i), (A) to (R).</summary>
internal enum SafeHarbor
{
    None = 0,
    Names = 'A',
    SmallAreas = 'B',
    Dates = 'C',
    TelephoneNumbers = 'D',
    FaxNumbers = 'E',
    EmailAddresses = 'F',
    SocialSecurityNumbers = 'G',
    MedicalRecordNumbers = 'H',
    HealthPlanNumbers = 'I',
    AccountNumbers = 'J',
    LicenceNumbers = 'K',
    VehicleIdentifiers = 'L',
    DeviceIdentifiers = 'M',
    WebAddresses = 'N',
    InternetAddresses = 'O',
    Biometrics = 'P',
    FacePhotographs = 'Q',
    OtherCodes = 'R',
}
