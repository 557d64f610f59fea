using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.PersonLog;

/// <summary>What <see cref="RunCounter"/> made of the screening and confirmatory rows.</summary>
/// <param name="Cells">
/// Every cube that comes from screening and confirmatory rows, with the ledger of the rows taken (a conflicting
/// screen_id is in it as set aside) and the diagnostics of counting (also for duplicates and conflicts). The reader adds its own cells to it: set-aside rows
/// (a second ledger cell of the same entry is simply added up), headcount, completeness, a controls export, its diagnostics.
/// </param>
/// <param name="Removed">Rows taken out again, by export and record.</param>
internal sealed record CountedExports(TallyCells Cells, ImmutableArray<RemovedRow> Removed)
{
    /// <summary>The sites, lots and kits of counted rows, by column: only these may be shown, for a row that was set aside can hold anything anywhere.</summary>
    public IReadOnlyDictionary<string, CountedLevels> Levels { get; init; } = new Dictionary<string, CountedLevels>();
}
