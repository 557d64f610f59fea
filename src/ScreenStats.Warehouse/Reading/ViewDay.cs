namespace ScreenStats.Warehouse.Reading;

/// <summary>Rows of a local day.</summary>
/// <param name="Day">Days since 2000-01-01.</param>
/// <param name="Counted">Counted rows.</param>
/// <param name="Dates">Those of them without a time.</param>
/// <param name="First">First instant of a row with one.</param>
/// <param name="Last">Last instant.</param>
internal readonly record struct ViewDay(int Day, long Counted, long Dates, long? First, long? Last);
