namespace ScreenStats.Counting.Cubes;

/// <summary>Positive confirmatory specimens, taken for another reason than audit, of people whose latest run was negative.</summary>
/// <remarks>A second positive within the episode days is the same infection and is not counted again; see <see cref="Rules.IntervalCaseRule"/>.</remarks>
/// <param name="Site">Site of that negative run.</param>
/// <param name="DaysSinceRun">Whole calendar days from the run to the specimen.</param>
/// <param name="Count">Number of specimens, positive.</param>
public sealed record IntervalCaseCell(string Site, int DaysSinceRun, long Count);
