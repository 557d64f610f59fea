using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>The program cut by everything a rate is broken down by, in one pass over the cubes.</summary>
internal static class Slices
{
    /// <summary>Cuts a tally. A breakdown of which nothing is recorded is left out (lots are always kept).</summary>
    /// <param name="tally">The tally.</param>
    /// <returns>Slices by grouping, level (ordinal) and period; the program's own is always there.</returns>
    public static IReadOnlyList<Slice> Of(Tally tally)
    {
        var cells = tally.Cells;
        var slices = new Dictionary<(Grouping Grouping, string Level, DateOnly? Start), Slice>();
        Slice Find(Grouping grouping, string level, DateOnly? start)
        {
            if (slices.TryGetValue((grouping, level, start), out var slice)) return slice;
            return slices[(grouping, level, start)] = new Slice(grouping, level, start);
        }

        Find(Grouping.Program, "", null);
        var recorded = new HashSet<Grouping> { Grouping.Program, Grouping.Site, Grouping.Lot, Grouping.Period, Grouping.SiteAndPeriod };
        foreach (var cell in cells.Screens)
        {
            var start = cells.Period.Start(cell.Day);
            var specimen = Model.LevelNames.Of(cell.Specimen);
            var collection = Model.LevelNames.Of(cell.Collection);
            ReadOnlySpan<(Grouping, string, DateOnly?)> places =
            [
                (Grouping.Program, "", null), (Grouping.Site, cell.Site, null), (Grouping.Lot, cell.Lot, null),
                (Grouping.Specimen, specimen, null), (Grouping.Collection, collection, null),
                (Grouping.Period, "", start), (Grouping.SiteAndPeriod, cell.Site, start),
            ];
            foreach (var (grouping, level, period) in places) Find(grouping, level, period).Add(cell.Site, cell.Day, cell.Outcome, cell.Runs);
            if (specimen != Levels.None) recorded.Add(Grouping.Specimen);
            if (collection != Levels.None) recorded.Add(Grouping.Collection);
        }

        foreach (var cell in cells.Operators)
        {
            Find(Grouping.Operator, cell.Operator, null).Add(cell.Site, cell.Day, cell.Outcome, cell.Runs);
            if (cell.Operator != Levels.None) recorded.Add(Grouping.Operator);
        }

        return [.. slices.Values
            .Where(slice => recorded.Contains(slice.Grouping))
            .OrderBy(slice => slice.Grouping).ThenBy(slice => slice.Level, Levels.Order).ThenBy(slice => slice.PeriodStart)];
    }

    /// <summary>The sums over people that belong to a slice; null where the tally has none.</summary>
    public static Statistics.Proportions.ClusterSums? PersonsOf(this Slice slice, PersonSums persons, PersonMeasure measure, ReportPeriod period) =>
        slice.Grouping switch
        {
            Grouping.Program => persons.Sums(PersonScope.Program, measure),
            Grouping.Site => persons.Sums(PersonScope.Site, measure, slice.Level),
            Grouping.Lot => persons.Sums(PersonScope.Lot, measure, slice.Level),
            Grouping.Period => persons.Sums(PersonScope.Period, measure, "", slice.PeriodStart),
            Grouping.SiteAndPeriod when period == ReportPeriod.Week => persons.Sums(PersonScope.SiteWeek, measure, slice.Level, slice.PeriodStart),
            _ => null,
        };
}
