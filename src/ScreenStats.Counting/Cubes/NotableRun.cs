namespace ScreenStats.Counting.Cubes;

/// <summary>One run that somebody may want to look at singly: a positive, inconclusive or invalid one, or a control swab. Names no person.</summary>
/// <param name="Minute">Local time of the run, cut to the minute; midnight where only a date is recorded.</param>
/// <param name="DateOnly">True where only a date is recorded.</param>
/// <param name="Site">Site name.</param>
/// <param name="Lot">Lot name, or <see cref="Levels.None"/>.</param>
/// <param name="Kit">Kit name, or <see cref="Levels.None"/>.</param>
/// <param name="Operator">Operator pseudonym, or <see cref="Levels.None"/>.</param>
/// <param name="Specimen">Where the swab was taken.</param>
/// <param name="Collection">Who collected it.</param>
/// <param name="Outcome">Outcome by the lines seen.</param>
/// <param name="FollowUp">What became of the run.</param>
/// <param name="MinutesToSpecimen">Minutes from the run to the specimen that settled its follow-up (whole days times 1,440 where either side has only a date); negative where the specimen came first; null without one.</param>
/// <param name="Control">For a run of a control swab the expected outcome; null for a screen.</param>
/// <param name="Occasion">Why the run was taken; a run of a control swab is always routine.</param>
public readonly record struct NotableRun(
    DateTime Minute, bool DateOnly, string Site, string Lot, string Kit, string Operator, Specimen Specimen, CollectedBy Collection,
    Outcome Outcome, FollowUp FollowUp, int? MinutesToSpecimen, ControlExpectation? Control, Occasion Occasion = Occasion.Routine);
