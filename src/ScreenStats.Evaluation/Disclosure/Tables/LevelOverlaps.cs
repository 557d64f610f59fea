using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>Finds levels that go together: for each two breakdowns the connected sets of levels that share a run, where there is more than one.</summary>
internal static class LevelOverlaps
{
    public static IEnumerable<LevelOverlap> Of(Tally tally)
    {
        var cells = tally.Cells.Screens.Select(cell => new[]
        {
            new CountUnit("site", cell.Site, ""),
            new CountUnit("lot", cell.Lot, ""),
            new CountUnit("specimen", LevelNames.Of(cell.Specimen), ""),
            new CountUnit("collection", LevelNames.Of(cell.Collection), ""),
            new CountUnit("program", "", tally.Cells.Period.Start(cell.Day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
        }).ToList();
        for (var first = 0; first < 5; first++)
        {
            for (var second = first + 1; second < 5; second++)
            {
                var sets = Connected(cells.Select(cell => (cell[first], cell[second])).Distinct());
                if (sets.Count < 2) continue;
                foreach (var (left, right) in sets) yield return new LevelOverlap([.. left], [.. right]);
            }
        }
    }

    private static List<(List<CountUnit> First, List<CountUnit> Second)> Connected(IEnumerable<(CountUnit, CountUnit)> pairs)
    {
        var neighbours = new Dictionary<CountUnit, List<CountUnit>>();
        var firsts = new List<CountUnit>();
        foreach (var (first, second) in pairs)
        {
            if (!neighbours.TryGetValue(first, out var of))
            {
                neighbours.Add(first, of = []);
                firsts.Add(first);
            }

            of.Add(second);
            if (!neighbours.TryGetValue(second, out var back)) neighbours.Add(second, back = []);
            back.Add(first);
        }

        var seen = new HashSet<CountUnit>();
        var sets = new List<(List<CountUnit>, List<CountUnit>)>();
        var left = firsts.ToHashSet();
        foreach (var start in firsts.Where(unit => !seen.Contains(unit)))
        {
            var set = (First: new List<CountUnit>(), Second: new List<CountUnit>());
            var queue = new Queue<CountUnit>([start]);
            seen.Add(start);
            while (queue.TryDequeue(out var unit))
            {
                (left.Contains(unit) ? set.First : set.Second).Add(unit);
                foreach (var other in neighbours[unit].Where(seen.Add)) queue.Enqueue(other);
            }

            sets.Add(set);
        }

        return sets;
    }
}
