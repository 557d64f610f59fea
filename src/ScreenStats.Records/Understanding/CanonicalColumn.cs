namespace ScreenStats.Records.Understanding;

/// <summary>One column of an export's contract.</summary>
/// <param name="Name">Canonical name.</param>
/// <param name="Required">True where a row without it is set aside (the two lines may stand for a result).</param>
/// <param name="Headings">Other headings by which it is recognised, before folding.</param>
internal sealed record CanonicalColumn(string Name, bool Required, IReadOnlyList<string> Headings);
