using System.Collections.Immutable;

namespace ScreenStats.Reporting.Files;

/// <summary>The columns by which the rows of a table differ.</summary>
/// <param name="Columns">Their names in files.</param>
/// <param name="MayBeEmpty">Whether one of them may be empty in a row: the level of a whole program, the period of the whole span.</param>
internal sealed record TableKey(ImmutableArray<string> Columns, bool MayBeEmpty);
