namespace ScreenStats.Records;

/// <summary>What one heading was taken for.</summary>
/// <param name="Heading">The heading as it stands in the file.</param>
/// <param name="Column">The canonical column, or null where the column is not read.</param>
/// <param name="Why">Why it was taken for it.</param>
public sealed record HeadingUnderstanding(string Heading, string? Column, HeadingEvidence Why);
