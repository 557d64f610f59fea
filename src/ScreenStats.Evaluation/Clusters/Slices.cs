using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;

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
            ref var slice = ref CollectionsMarshal.GetValueRefOrAddDefault(slices, (grouping, level, start), out _);
            return slice ??= new Slice(grouping, level, start);
        }

        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        int Number(string site)
        {
            ref var number = ref CollectionsMarshal.GetValueRefOrAddDefault(numbers, site, out var known);
            if (!known) number = numbers.Count;
            return number;
        }

        var program = Find(Grouping.Program, "", null);
        var recorded = new HashSet<Grouping> { Grouping.Program, Grouping.Site, Grouping.Lot, Grouping.Period, Grouping.SiteAndPeriod };
        // Cells that follow each other often differ by day or outcome alone: they are summed before they are looked up.
        var sum = default(SliceCounts);
        (string Site, string Lot, DateOnly Start, DateOnly Week, Specimen Specimen, CollectedBy Collection) place = ("", "", default, default, default, default);
        void Put()
        {
            if (sum.Runs == 0) return;
            var site = Number(place.Site);
            ReadOnlySpan<Slice> places =
            [
                program, Find(Grouping.Site, place.Site, null), Find(Grouping.Lot, place.Lot, null),
                Find(Grouping.Specimen, LevelNames.Of(place.Specimen), null), Find(Grouping.Collection, LevelNames.Of(place.Collection), null),
                Find(Grouping.Period, "", place.Start), Find(Grouping.SiteAndPeriod, place.Site, place.Start),
            ];
            foreach (var slice in places) slice.Add(site, place.Week, sum);
            if (place.Specimen != Specimen.NotRecorded) recorded.Add(Grouping.Specimen);
            if (place.Collection != CollectedBy.NotRecorded) recorded.Add(Grouping.Collection);
            sum = default;
        }

        foreach (var cell in cells.Screens)
        {
            var here = (cell.Site, cell.Lot, cells.Period.Start(cell.Day), ReportPeriods.Monday(cell.Day), cell.Specimen, cell.Collection);
            if (here != place)
            {
                Put();
                place = here;
            }

            sum.Add(cell.Outcome, cell.Runs);
        }

        Put();
        foreach (var cell in cells.Operators)
        {
            var counts = default(SliceCounts);
            counts.Add(cell.Outcome, cell.Runs);
            Find(Grouping.Operator, cell.Operator, null).Add(Number(cell.Site), ReportPeriods.Monday(cell.Day), counts);
            if (cell.Operator != Levels.None) recorded.Add(Grouping.Operator);
        }

        return [.. slices.Values
            .Where(slice => recorded.Contains(slice.Grouping))
            .OrderBy(slice => slice.Grouping).ThenBy(slice => slice.Level, Levels.Order).ThenBy(slice => slice.PeriodStart)];
    }

    /// <summary>The sums over people that belong to a slice; null where the tally has none.</summary>
    public static Statistics.Clusters.ClusterSums? PersonsOf(this Slice slice, PersonSums persons, PersonMeasure measure, ReportPeriod period) =>
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
