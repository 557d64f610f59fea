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
        AuditStrata = audits.Length == 0 ? [] : [new AuditStratumCell(Levels.None, StratumOrigin.WholeProgram, screens.Where(cell => cell.Outcome == Outcome.Negative).Sum(cell => cell.Runs))],
        AuditProducts = audits.Length == 0 ? [] : [.. Products(screens)],
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

    private static IEnumerable<AuditProductCell> Products(IReadOnlyCollection<ScreenCell> screens)
    {
        yield return new AuditProductCell("", AuditTotal.Persons, "", AuditTotal.Persons, screens.Where(Valid).Sum(cell => cell.Runs));
        foreach (var total in Enum.GetValues<AuditTotal>()[1..])
        {
            var runs = screens.Where(cell => Is(cell, total)).Sum(cell => cell.Runs);
            yield return new AuditProductCell("", AuditTotal.Persons, Levels.None, total, runs);
            yield return new AuditProductCell(Levels.None, total, Levels.None, total, runs);
            var whole = total <= AuditTotal.Refuted ? AuditTotal.Positives : AuditTotal.Negatives;
            if (total != whole) yield return new AuditProductCell(Levels.None, whole, Levels.None, total, runs);
        }
    }

    private static bool Is(ScreenCell cell, AuditTotal total) => total switch
    {
        AuditTotal.Positives => cell.Outcome == Outcome.Positive,
        AuditTotal.Confirmed => cell.Outcome == Outcome.Positive && cell.FollowUp == FollowUp.Confirmed,
        AuditTotal.Refuted => cell.Outcome == Outcome.Positive && cell.FollowUp == FollowUp.Refuted,
        AuditTotal.Negatives => cell.Outcome == Outcome.Negative,
        AuditTotal.Missed => cell.FollowUp == FollowUp.Missed,
        _ => cell.FollowUp == FollowUp.Agreed,
    };

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
