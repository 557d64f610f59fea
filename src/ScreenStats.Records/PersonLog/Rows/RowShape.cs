using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>What many rows share: site, lot, outcome, specimen, collection, marks, offset. The log keeps a code of it.</summary>
internal readonly record struct RowShape(int Site, int Lot, uint Bits)
{
    public Outcome Outcome => (Outcome)(Bits & 3);

    public Specimen Specimen => (Specimen)((Bits >> 2) & 7);

    public CollectedBy Collection => (CollectedBy)((Bits >> 5) & 3);

    public ControlExpectation? Control => ((Bits >> 9) & 3) switch { 0 => null, var control => (ControlExpectation)(control - 1) };

    public bool DateOnly => (Bits & (1 << 11)) != 0;

    public bool HasScreenId => (Bits & (1 << 12)) != 0;

    public int OffsetMinutes => (short)(Bits >> 13);

    public OutbreakMark Outbreak => (OutbreakMark)(Bits >> 29);

    public LedgerEntry Entry => LedgerRule.Entry(Control, (Bits & (1 << 7)) != 0, (Bits & (1 << 8)) != 0);

    public static RowShape Of(in RunRow row) => new(row.Site, row.Lot,
        (uint)row.Outcome
        | ((uint)row.Specimen << 2)
        | ((uint)row.Collection << 5)
        | (row.Symptomatic ? 1u << 7 : 0)
        | (row.Exposed ? 1u << 8 : 0)
        | (row.Control is { } control ? ((uint)control + 1) << 9 : 0)
        | (row.DateOnly ? 1u << 11 : 0)
        | (row.HasScreenId ? 1u << 12 : 0)
        | ((uint)(ushort)row.OffsetMinutes << 13)
        | ((uint)row.Outbreak << 29));

    /// <summary>A row of this shape: what it has of its own is blank.</summary>
    public RunRow Blank() => new()
    {
        Site = Site,
        Lot = Lot,
        Outcome = Outcome,
        Specimen = Specimen,
        Collection = Collection,
        Symptomatic = (Bits & (1 << 7)) != 0,
        Exposed = (Bits & (1 << 8)) != 0,
        Control = Control,
        DateOnly = DateOnly,
        HasScreenId = HasScreenId,
        OffsetMinutes = (short)OffsetMinutes,
        Outbreak = Outbreak,
    };

    public Moment Time(uint seconds) => new(seconds + RunCounter.EarliestInstant, OffsetMinutes, DateOnly);
}
