namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>What became of a column.</summary>
/// <param name="Number">Position in the file that was read, from 1.</param>
/// <param name="Heading">Its heading; empty where the heading itself looks like a person's.</param>
/// <param name="Treatment">What was done.</param>
/// <param name="Replaced">Rows whose value was replaced; rows guarded against formulas where the column was kept.</param>
/// <param name="Blank">Rows that name nobody and stay as they are; not counted where the column was kept or dropped.</param>
/// <param name="Unreadable">Rows whose date could not be read, which are now blank.</param>
public sealed record PseudonymizedColumn(int Number, string Heading, ColumnTreatment Treatment, long Replaced, long Blank, long Unreadable);
