namespace ScreenStats.Counting.Cubes;

/// <summary>
/// Positive and inconclusive runs whose follow-up became known, or changed, on a day. Names no person.
/// </summary>
/// <remarks>
/// <para>
/// Each run that calls for follow-up starts as pending on its own day, without a cell. After that there is one cell for each day at whose
/// end its follow-up is another than at the end of the day before (or than pending, on its own day): <paramref name="Before"/> to
/// <paramref name="After"/>. A run that nothing became of is pending to the end of its time and then unverified: that is a change like
/// the others, and may lie after the last day of the data.
/// </para>
/// <para>
/// The follow-up at the end of a day is what the rules of linkage give for the runs and specimens reported by then
/// (<see cref="Rules.SettlementRule"/>). Two specimens that were reported in another order than they were collected make two changes:
/// refuted, then confirmed.
/// </para>
/// </remarks>
/// <param name="Minute">Local time of the run, as in <see cref="NotableRun.Minute"/>.</param>
/// <param name="DateOnly">True where only a date is recorded.</param>
/// <param name="Site">Site of the run.</param>
/// <param name="Lot">Lot of the run, or <see cref="Levels.None"/>.</param>
/// <param name="Kit">Kit of the run, or <see cref="Levels.None"/>.</param>
/// <param name="Operator">Operator pseudonym, or <see cref="Levels.None"/>.</param>
/// <param name="Specimen">Where the swab was taken.</param>
/// <param name="Collection">Who collected it.</param>
/// <param name="Outcome">Positive or inconclusive.</param>
/// <param name="Known">Local day at whose end the change is known.</param>
/// <param name="Before">Follow-up before.</param>
/// <param name="MinutesBefore">Minutes to the specimen that settled it before, as in <see cref="NotableRun.MinutesToSpecimen"/>.</param>
/// <param name="After">Follow-up from then on.</param>
/// <param name="MinutesAfter">Minutes to the specimen that settles it from then on; null where none confirms or refutes.</param>
/// <param name="Runs">Number of runs, positive.</param>
/// <param name="Occasion">Why they were taken.</param>
public readonly record struct SettlementCell(
    DateTime Minute, bool DateOnly, string Site, string Lot, string Kit, string Operator, Specimen Specimen, CollectedBy Collection, Outcome Outcome,
    DateOnly Known, FollowUp Before, int? MinutesBefore, FollowUp After, int? MinutesAfter, long Runs,
    Occasion Occasion = Occasion.Routine)
{
    /// <summary>Local day of the run.</summary>
    public DateOnly Day => System.DateOnly.FromDateTime(Minute);
}
