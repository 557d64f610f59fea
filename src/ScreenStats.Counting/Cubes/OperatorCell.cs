namespace ScreenStats.Counting.Cubes;

/// <summary>Counted screening runs by the operator who carried them out.</summary>
/// <param name="Operator">Operator pseudonym, or <see cref="Levels.None"/>.</param>
/// <param name="Site">Site name.</param>
/// <param name="Day">Local calendar day of the run.</param>
/// <param name="Outcome">Outcome by the lines seen.</param>
/// <param name="FollowUp">What became of the run.</param>
/// <param name="Runs">Number of runs, positive.</param>
/// <param name="Occasion">Why they were taken.</param>
public readonly record struct OperatorCell(
    string Operator, string Site, DateOnly Day, Outcome Outcome, FollowUp FollowUp, long Runs, Occasion Occasion = Occasion.Routine);
