namespace ScreenStats.Records.Understanding;

/// <summary>Why a heading was taken for a column.</summary>
internal enum HeadingReason
{
    None = 0,
    Mapped = 1,
    Exact = 2,
    Synonym = 3,
    MissingMapped = 4,
    WithUnit = 5,
    Element = 6,
}

/// <summary>The field a canonical column is read from.</summary>
/// <param name="Field">Position in the row from 0, or -1.</param>
/// <param name="Reason">Why.</param>
internal readonly record struct HeadingMatch(int Field, HeadingReason Reason)
{
    public static readonly HeadingMatch Absent = new(-1, HeadingReason.None);
}
