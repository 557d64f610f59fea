using ScreenStats.Counting.Programs;
using ScreenStats.Records;

namespace ScreenStats.Warehouse;

/// <summary>Counts a program by SQL where its data live: PostgreSQL, single or sharded, or DuckDB.</summary>
public sealed class WarehouseReader : IWarehouse
{
    /// <inheritdoc/>
    public ReadingResult Read(ProgramSettings settings, string folder, ReadOptions? options = null) => throw new NotImplementedException();
}
