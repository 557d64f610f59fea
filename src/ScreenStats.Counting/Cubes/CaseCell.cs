namespace ScreenStats.Counting.Cubes;

/// <summary>Cases: a person's first confirmed run with no other confirmatory positive in the episode days before.</summary>
/// <param name="Site">Site of the run.</param>
/// <param name="Lot">Lot of the run, or <see cref="Levels.None"/>.</param>
/// <param name="Day">Local day of the run.</param>
/// <param name="FoundThrough">Positive or inconclusive: the outcome that found the case.</param>
/// <param name="Cases">Number of cases, positive.</param>
public sealed record CaseCell(string Site, string Lot, DateOnly Day, Outcome FoundThrough, long Cases);
