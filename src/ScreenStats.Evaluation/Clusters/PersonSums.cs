using ScreenStats.Counting.Cubes;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>Finds the sums over people of a part of the program.</summary>
internal sealed class PersonSums
{
    private readonly Dictionary<(PersonScope Scope, string Level, DateOnly? Start, PersonMeasure Measure), PersonCell> cells;

    public PersonSums(Tally tally) => cells = tally.Cells.Persons.ToDictionary(cell => (cell.Scope, cell.Level, cell.PeriodStart, cell.Measure));

    public PersonCell? Cell(PersonScope scope, PersonMeasure measure, string level = "", DateOnly? start = null) =>
        cells.TryGetValue((scope, level, start, measure), out var cell) ? cell : null;

    public ClusterSums? Sums(PersonScope scope, PersonMeasure measure, string level = "", DateOnly? start = null) =>
        Cell(scope, measure, level, start) is { } cell
            ? new ClusterSums(cell.Persons, cell.Trials, cell.Events, cell.TrialsSquared, cell.TrialsTimesEvents, cell.EventsSquared)
            : null;
}
