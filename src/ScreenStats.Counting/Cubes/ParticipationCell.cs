namespace ScreenStats.Counting.Cubes;

/// <summary>How many people had so many counted runs.</summary>
/// <param name="Runs">Counted runs of one person, at least 1.</param>
/// <param name="Persons">People with exactly so many.</param>
public sealed record ParticipationCell(int Runs, long Persons);
