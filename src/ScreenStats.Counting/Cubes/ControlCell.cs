namespace ScreenStats.Counting.Cubes;

/// <summary>Runs of control swabs: expected against observed.</summary>
/// <param name="Site">Site name.</param>
/// <param name="Lot">Lot name, or <see cref="Levels.None"/>.</param>
/// <param name="Kit">Kit name, or <see cref="Levels.None"/>.</param>
/// <param name="Day">Local day.</param>
/// <param name="Expected">What the swab should show.</param>
/// <param name="Observed">What it showed.</param>
/// <param name="Runs">Number of runs, positive.</param>
public readonly record struct ControlCell(
    string Site, string Lot, string Kit, DateOnly Day, ControlExpectation Expected, Outcome Observed, long Runs);
