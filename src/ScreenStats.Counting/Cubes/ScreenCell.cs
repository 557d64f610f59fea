namespace ScreenStats.Counting.Cubes;

/// <summary>Counted screening runs that share site, lot, local day, specimen, collection, outcome, follow-up and occasion.</summary>
/// <param name="Site">Site name.</param>
/// <param name="Lot">Lot name, or <see cref="Levels.None"/>.</param>
/// <param name="Day">Local calendar day of the run.</param>
/// <param name="Specimen">Where the swab was taken.</param>
/// <param name="Collection">Who collected it.</param>
/// <param name="Outcome">Outcome by the lines seen.</param>
/// <param name="FollowUp">What became of the run.</param>
/// <param name="Runs">Number of runs, positive.</param>
/// <param name="Occasion">Why they were taken.</param>
public readonly record struct ScreenCell(
    string Site, string Lot, DateOnly Day, Specimen Specimen, CollectedBy Collection, Outcome Outcome, FollowUp FollowUp, long Runs,
    Occasion Occasion = Occasion.Routine);
