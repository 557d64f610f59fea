using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Records;
using ScreenStats.Warehouse.Reading;

namespace ScreenStats.Warehouse;

/// <summary>
/// Counts a program by SQL where its data live: PostgreSQL, one server or shards behind one, or a DuckDB file. The tally is the one that files with
/// the same rows give; counts move, and those rows that the rules look at one by one.
/// </summary>
public sealed class WarehouseReader : IWarehouse
{
    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The settings name no warehouse.</exception>
    public ReadingResult Read(ProgramSettings settings, string folder, ReadOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(folder);
        if (settings.Warehouse is null) throw new ArgumentException("The settings name no warehouse.", nameof(settings));
        return new ProgramReader().Read(settings, folder, options, new Views(folder));
    }
}
