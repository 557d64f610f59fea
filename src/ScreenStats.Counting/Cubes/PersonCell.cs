namespace ScreenStats.Counting.Cubes;

/// <summary>Sums over the people of one scope: enough for counts of people and for the design effect of repeated testing, and no more.</summary>
/// <param name="Scope">The part of the program.</param>
/// <param name="Level">Site or lot name; empty for the others.</param>
/// <param name="PeriodStart">First day of the period or week; null for the whole span.</param>
/// <param name="Measure">Which runs are trials n and which are events x.</param>
/// <param name="Persons">People with at least one trial.</param>
/// <param name="PersonsWithEvent">People with at least one event.</param>
/// <param name="Trials">Sum over people of n.</param>
/// <param name="Events">Sum over people of x.</param>
/// <param name="TrialsSquared">Sum over people of n squared.</param>
/// <param name="TrialsTimesEvents">Sum over people of n times x.</param>
/// <param name="EventsSquared">Sum over people of x squared.</param>
public readonly record struct PersonCell(
    PersonScope Scope, string Level, DateOnly? PeriodStart, PersonMeasure Measure,
    long Persons, long PersonsWithEvent, long Trials, long Events, long TrialsSquared, long TrialsTimesEvents, long EventsSquared);
