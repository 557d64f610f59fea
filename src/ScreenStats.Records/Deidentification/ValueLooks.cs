namespace ScreenStats.Records.Deidentification;

/// <summary>What a value can look like besides its <see cref="IdentityKind"/>.</summary>
[Flags]
internal enum ValueLooks
{
    None = 0,

    /// <summary>Letters only, no space.</summary>
    OneWord = 1,

    /// <summary>One of its words is a frequent given or family name.</summary>
    HoldsFrequentName = 2,

    /// <summary>A date on which somebody who works may have been born.</summary>
    BirthDate = 4,

    /// <summary>An IP address.</summary>
    InternetAddress = 8,

    /// <summary>A web address.</summary>
    WebAddress = 16,
}
