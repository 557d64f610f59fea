using ScreenStats.Counting.Cubes;

namespace ScreenStats.Tests.Synthesis;

/// <summary>A tally straight from counts, as if every run were another person's: the other cubes follow from the screens.</summary>
internal static class OneRunEach
{
    public static Tally Tally(IReadOnlyCollection<ScreenCell> screens, params AuditCell[] audits) => Counting.Cubes.Tally.FromCells(new TallyCells
    {
        HasConfirmatory = true,
        Screens = [.. screens],
        Audits = [.. audits],
        Operators = [.. screens.Select(cell => new OperatorCell(Levels.None, cell.Site, cell.Day, cell.Outcome, cell.FollowUp, cell.Runs))],
        Notable = [.. screens.Where(cell => cell.Outcome != Outcome.Negative).SelectMany(cell => Enumerable.Repeat(Notable(cell), (int)cell.Runs))],
        Persons =
        [
            Persons(PersonMeasure.Positivity, screens, Valid, cell => cell.Outcome == Outcome.Positive),
            Persons(PersonMeasure.InvalidRuns, screens, _ => true, cell => !Valid(cell)),
            Persons(PersonMeasure.PredictiveValue, screens, Conclusive, cell => cell.FollowUp == FollowUp.Confirmed),
            Persons(PersonMeasure.Refuted, screens, Valid, cell => Conclusive(cell) && cell.FollowUp == FollowUp.Refuted),
        ],
        Participation = [new ParticipationCell(1, screens.Sum(cell => cell.Runs))],
    });

    private static bool Valid(ScreenCell cell) => cell.Outcome is Outcome.Negative or Outcome.Positive;

    private static bool Conclusive(ScreenCell cell) => cell.Outcome == Outcome.Positive && cell.FollowUp is FollowUp.Confirmed or FollowUp.Refuted;

    private static NotableRun Notable(ScreenCell cell) => new(
        cell.Day.ToDateTime(TimeOnly.MinValue), true, cell.Site, cell.Lot, Levels.None, Levels.None, cell.Specimen, cell.Collection, cell.Outcome, cell.FollowUp, null, null);

    private static PersonCell Persons(PersonMeasure measure, IReadOnlyCollection<ScreenCell> screens, Func<ScreenCell, bool> trial, Func<ScreenCell, bool> happened)
    {
        var trials = screens.Where(trial).Sum(cell => cell.Runs);
        var events = screens.Where(cell => trial(cell) && happened(cell)).Sum(cell => cell.Runs);
        return new PersonCell(PersonScope.Program, "", null, measure, trials, events, trials, events, trials, events, events);
    }
}
