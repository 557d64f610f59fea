using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>One valid confirmatory row as the reader understood it.</summary>
internal struct SpecimenRow
{
    /// <summary>64-bit hash of the person's pseudonym: the same function as for screening rows.</summary>
    public ulong Person;

    /// <summary>Seconds since 2000-01-01T00:00:00, as in <see cref="RunRow.Instant"/>.</summary>
    public long Instant;

    /// <summary>Offset of local time, as in <see cref="RunRow.OffsetMinutes"/>.</summary>
    public short OffsetMinutes;

    /// <summary>True where only a date is recorded.</summary>
    public bool DateOnly;

    /// <summary>Position of the row among all rows of the export.</summary>
    public uint Record;

    /// <summary>What the laboratory reported.</summary>
    public ConfirmatoryResult Result;

    /// <summary>Why the specimen was taken.</summary>
    public SpecimenReason Reason;

    /// <summary>Seconds since 2000-01-01T00:00:00 of the report on the same scale as <see cref="Instant"/>; null where not recorded.</summary>
    public long? Reported;

    /// <summary>True where the report has only a date.</summary>
    public bool ReportedDateOnly;

    /// <summary>Code of the sampling stratum in <see cref="Vocabularies.Strata"/>; 0 is "(none)".</summary>
    public int Stratum;

    /// <summary>64-bit hash of all mapped columns as understood.</summary>
    public ulong Meaning;
}
