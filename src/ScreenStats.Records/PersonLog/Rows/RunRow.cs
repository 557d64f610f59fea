using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>
/// One valid screening row as the reader understood it: the only thing that passes from reading to counting. Text is
/// already a code in one of the vocabularies of <see cref="Vocabularies"/>; people are hashes.
/// </summary>
internal struct RunRow
{
    /// <summary>64-bit hash of the person's pseudonym; 0 only on a control-swab row without one.</summary>
    public ulong Person;

    /// <summary>
    /// Seconds since 2000-01-01T00:00:00 of the run's instant in UTC (or of its local time where the program has no
    /// time zone and no offsets). A date-only run has the local midnight that starts its day.
    /// </summary>
    public long Instant;

    /// <summary>Offset of local time from the scale of <see cref="Instant"/>, in minutes: local = Instant + 60 x this.</summary>
    public short OffsetMinutes;

    /// <summary>True where only a date is recorded.</summary>
    public bool DateOnly;

    /// <summary>Position of the row among all rows of the export, in file order: unique, increasing, the same whatever the number of threads.</summary>
    public uint Record;

    /// <summary>Code of the site in <see cref="Vocabularies.Sites"/>.</summary>
    public int Site;

    /// <summary>Code of the lot in <see cref="Vocabularies.Lots"/>; 0 is "(none)".</summary>
    public int Lot;

    /// <summary>Code of the kit in <see cref="Vocabularies.Kits"/>; 0 is "(none)".</summary>
    public int Kit;

    /// <summary>Code of the operator in <see cref="Vocabularies.Operators"/>; 0 is "(none)".</summary>
    public int Operator;

    /// <summary>Outcome by the lines seen.</summary>
    public Outcome Outcome;

    /// <summary>Where the swab was taken.</summary>
    public Specimen Specimen;

    /// <summary>Who collected it.</summary>
    public CollectedBy Collection;

    /// <summary>True only where the export says yes: a blank is "not recorded", which is not kept out.</summary>
    public bool Symptomatic;

    /// <summary>True only where the export says yes.</summary>
    public bool Exposed;

    /// <summary>What the row says of an outbreak.</summary>
    public OutbreakMark Outbreak;

    /// <summary>For a control swab the expected outcome.</summary>
    public ControlExpectation? Control;

    /// <summary>Last local day on which the lot may be used; null where not recorded.</summary>
    public DateOnly? LotExpiry;

    /// <summary>Minutes from collection to reading; null where either time of day is not recorded.</summary>
    public int? MinutesToReading;

    /// <summary>True where the row has a screen_id.</summary>
    public bool HasScreenId;

    /// <summary>64-bit hash of the screen_id; 0 without one.</summary>
    public ulong ScreenId;

    /// <summary>64-bit hash of all mapped columns as understood (two rows that mean the same have the same; the reverse is checked against the file).</summary>
    public ulong Meaning;
}
