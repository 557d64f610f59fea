namespace ScreenStats.Statistics.Economics.Turning;

/// <summary>A value of a figure at which a gain changes its sign.</summary>
/// <param name="Value">The value.</param>
/// <param name="Rises">Whether the gain is below 0 before it and above 0 after it.</param>
public readonly record struct TurningPlace(double Value, bool Rises);
