namespace ScreenStats.Warehouse.Sql;

/// <summary>What rows a view has beside counted ones.</summary>
/// <param name="Faults">Rows that are set aside.</param>
/// <param name="Controls">Control runs.</param>
/// <param name="Symptomatic">Runs of symptomatic people.</param>
/// <param name="Exposed">Runs of contacts.</param>
internal sealed record RowsMet(bool Faults, bool Controls, bool Symptomatic, bool Exposed);
