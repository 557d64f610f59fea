namespace ScreenStats.Counting.Cubes;

/// <summary>Runs of control swabs, of the screening and of the controls export: expected against observed, in order of time where it is known.</summary>
/// <param name="Site">Site name.</param>
/// <param name="Lot">Lot name, or <see cref="Levels.None"/>.</param>
/// <param name="Kit">Kit name, or <see cref="Levels.None"/>.</param>
/// <param name="Day">Local day.</param>
/// <param name="Time">Local time of day, cut to the minute; null where only a date is recorded.</param>
/// <param name="Operator">Operator pseudonym, or <see cref="Levels.None"/>.</param>
/// <param name="Expected">What the swab should show.</param>
/// <param name="Observed">What it showed.</param>
/// <param name="Runs">Number of runs, positive.</param>
public sealed record ControlCell(
    string Site, string Lot, string Kit, DateOnly Day, TimeOnly? Time, string Operator, ControlExpectation Expected, Outcome Observed, long Runs)
{
    /// <summary>True where the control showed what it should.</summary>
    public bool IsPassed => Observed == (Expected == ControlExpectation.Positive ? Outcome.Positive : Outcome.Negative);
}
