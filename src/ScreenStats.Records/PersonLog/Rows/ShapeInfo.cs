using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>A row shape unpacked, for the scan.</summary>
internal readonly struct ShapeInfo(RowShape shape)
{
    public readonly int Site = shape.Site;
    public readonly int Lot = shape.Lot;
    public readonly short OffsetMinutes = (short)shape.OffsetMinutes;
    public readonly Outcome Outcome = shape.Outcome;
    public readonly bool DateOnly = shape.DateOnly;
    public readonly bool HasScreenId = shape.HasScreenId;
    public readonly bool Counted = shape.Entry == LedgerEntry.Counted;
}
