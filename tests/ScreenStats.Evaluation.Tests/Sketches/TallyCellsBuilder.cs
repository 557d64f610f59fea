using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Tests.Sketches;

/// <summary>Builds the cubes from runs that name their people, by the words of the design and without the code under test.</summary>
internal sealed class TallyCellsBuilder
{
    public static readonly DateOnly Monday = new(2026, 1, 5);

    private readonly List<Run> runs = [];

    public ReportPeriod Period { get; init; } = ReportPeriod.Week;

    /// <summary>Adds one run of a person.</summary>
    public TallyCellsBuilder Add(
        string person, Outcome outcome, FollowUp followUp = FollowUp.None, string site = "North", string lot = "L-1", int day = 0,
        string by = Levels.None, Specimen specimen = Specimen.NotRecorded, CollectedBy collection = CollectedBy.NotRecorded)
    {
        runs.Add(new Run(person, outcome, followUp, site, lot, Monday.AddDays(day), by, specimen, collection));
        return this;
    }

    public TallyCells Cells() => new()
    {
        Period = Period,
        HasConfirmatory = true,
        ReportingLagHours = 48,
        DataAsOf = runs.Count == 0 ? null : runs.Max(run => run.Day).ToDateTime(default),
        Screens = [.. runs.GroupBy(run => new ScreenCell(run.Site, run.Lot, run.Day, run.Specimen, run.Collection, run.Outcome, run.FollowUp, 1))
            .Select(cell => cell.Key with { Runs = cell.LongCount() })],
        Operators = [.. runs.GroupBy(run => new OperatorCell(run.Operator, run.Site, run.Day, run.Outcome, run.FollowUp, 1))
            .Select(cell => cell.Key with { Runs = cell.LongCount() })],
        Notable = [.. runs.Where(run => run.Outcome != Outcome.Negative).Select(run => new NotableRun(
            run.Day.ToDateTime(default), true, run.Site, run.Lot, Levels.None, run.Operator, run.Specimen, run.Collection, run.Outcome, run.FollowUp, null, null))],
        Persons = [.. Enum.GetValues<PersonMeasure>().SelectMany(Persons)],
        Participation = [.. runs.GroupBy(run => run.Person).GroupBy(person => person.Count()).Select(times => new ParticipationCell(times.Key, times.LongCount()))],
        Gaps = [.. Gaps()],
        Cases = [.. runs.Where(run => run.FollowUp == FollowUp.Confirmed).GroupBy(run => run.Person).Select(person => person.MinBy(run => run.Day)!)
            .GroupBy(run => new CaseCell(run.Site, run.Lot, run.Day, run.Outcome, 1)).Select(cell => cell.Key with { Cases = cell.LongCount() })],
    };

    public Tally Tally() => Counting.Cubes.Tally.FromCells(Cells());

    private IEnumerable<PersonCell> Persons(PersonMeasure measure)
    {
        var scopes = runs.SelectMany(run => new (PersonScope Scope, string Level, DateOnly? Start, Run Run)[]
        {
            (PersonScope.Program, "", null, run), (PersonScope.Site, run.Site, null, run), (PersonScope.Lot, run.Lot, null, run),
            (PersonScope.Period, "", Period.Start(run.Day), run), (PersonScope.Week, "", ReportPeriods.Monday(run.Day), run),
            (PersonScope.SiteWeek, run.Site, ReportPeriods.Monday(run.Day), run),
        });
        foreach (var scope in scopes.GroupBy(entry => (entry.Scope, entry.Level, entry.Start)))
        {
            var people = scope.GroupBy(entry => entry.Run.Person)
                .Select(person => (N: person.LongCount(entry => IsTrial(measure, entry.Run)), X: person.LongCount(entry => IsEvent(measure, entry.Run))))
                .Where(person => person.N > 0).ToList();
            if (people.Count == 0) continue;
            yield return new PersonCell(
                scope.Key.Scope, scope.Key.Level, scope.Key.Start, measure, people.Count, people.Count(person => person.X > 0),
                people.Sum(person => person.N), people.Sum(person => person.X), people.Sum(person => person.N * person.N),
                people.Sum(person => person.N * person.X), people.Sum(person => person.X * person.X));
        }
    }

    private IEnumerable<GapCell> Gaps() => runs
        .GroupBy(run => run.Person)
        .SelectMany(person => person.OrderBy(run => run.Day).ToList() is var sorted
            ? sorted.Skip(1).Select((run, index) => (run.Site, Days: run.Day.DayNumber - sorted[index].Day.DayNumber)) : [])
        .GroupBy(gap => gap)
        .Select(gap => new GapCell(gap.Key.Site, gap.Key.Days, gap.LongCount()));

    private static bool IsTrial(PersonMeasure measure, Run run) => measure switch
    {
        PersonMeasure.InvalidRuns => true,
        PersonMeasure.PredictiveValue => run is { Outcome: Outcome.Positive, FollowUp: FollowUp.Confirmed or FollowUp.Refuted },
        _ => run.Outcome is Outcome.Negative or Outcome.Positive,
    };

    private static bool IsEvent(PersonMeasure measure, Run run) => measure switch
    {
        PersonMeasure.Positivity => run.Outcome == Outcome.Positive,
        PersonMeasure.InvalidRuns => run.Outcome is Outcome.Inconclusive or Outcome.Invalid,
        PersonMeasure.PredictiveValue => run is { Outcome: Outcome.Positive, FollowUp: FollowUp.Confirmed },
        _ => run is { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted },
    };

    private sealed record Run(
        string Person, Outcome Outcome, FollowUp FollowUp, string Site, string Lot, DateOnly Day, string Operator, Specimen Specimen, CollectedBy Collection);
}
