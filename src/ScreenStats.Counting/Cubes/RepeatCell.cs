namespace ScreenStats.Counting.Cubes;

/// <summary>Inconclusive and invalid runs that call for a repeat on the same day, and repeats that were done.</summary>
/// <param name="Site">Site of the unusable run.</param>
/// <param name="Day">Local day of the unusable run, and of its repeat.</param>
/// <param name="Outcome">Inconclusive or invalid: the run that calls for the repeat.</param>
/// <param name="Due">Repeats due.</param>
/// <param name="Done">Repeats done, at most <paramref name="Due"/>.</param>
public sealed record RepeatCell(string Site, DateOnly Day, Outcome Outcome, long Due, long Done);
