using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Rules;
using ScreenStats.Statistics.Monitoring.Scans;

namespace ScreenStats.Evaluation.Bursts;

/// <summary>Runs by lot, site and day, numbered for the scan.</summary>
internal sealed class BurstCounts
{
    // Trials are multiplied so that rounding the part of a site's rate is small; the scan then takes events as rare.
    private const int Scale = 100;
    private const double Prior = 5;
    private readonly List<Entry> cells = [];
    private readonly string[] lots;
    private readonly string[] sites;

    public BurstCounts(Tally tally)
    {
        var (ofLot, ofSite) = (new Dictionary<string, int>(StringComparer.Ordinal), new Dictionary<string, int>(StringComparer.Ordinal));
        foreach (var cell in tally.Cells.Screens)
        {
            ofLot.TryAdd(cell.Lot, 0);
            ofSite.TryAdd(cell.Site, 0);
        }

        (lots, sites) = (Numbered(ofLot), Numbered(ofSite));
        var found = new Dictionary<(int, int, int), Entry>();
        foreach (var cell in tally.Cells.Screens)
        {
            var key = (ofLot[cell.Lot], ofSite[cell.Site], cell.Day.DayNumber);
            if (!found.TryGetValue(key, out var entry))
            {
                found.Add(key, entry = new Entry(key.Item1, key.Item2, key.Item3));
                cells.Add(entry);
            }

            var counts = entry.Counts;
            counts[(int)Part.Runs] += cell.Runs;
            if (cell.Outcome.IsUnusable()) counts[(int)Part.Unusable] += cell.Runs;
            else counts[(int)Part.Tests] += cell.Runs;
            if (cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Refuted }) counts[(int)Part.Refuted] += cell.Runs;
            if (cell is { Outcome: Outcome.Positive, FollowUp: FollowUp.Confirmed }) counts[(int)Part.Confirmed] += cell.Runs;
        }
    }

    /// <summary>What is counted.</summary>
    internal enum Part
    {
        Runs = 0,
        Tests = 1,
        Unusable = 2,
        Refuted = 3,
        Confirmed = 4,
    }

    public string Lot(int number) => lots[number];

    public string Site(int number) => sites[number];

    /// <summary>Events of a kind.</summary>
    public long Total(Part part) => cells.Sum(cell => cell.Counts[(int)part]);

    /// <summary>
    /// The cells of the scan: trials in proportion to the events that the site's own rate expects. The rate of a site is taken as if five more events had been
    /// seen there at the program's rate, so that a site with few runs is near the program.
    /// </summary>
    public List<BurstCell> Cells(Part trials, Part events)
    {
        var program = (double)Total(events) / Math.Max(1, Total(trials));
        if (program <= 0) return [];
        var (trialsOf, eventsOf) = (new long[sites.Length], new long[sites.Length]);
        foreach (var cell in cells)
        {
            trialsOf[cell.Site] += cell.Counts[(int)trials];
            eventsOf[cell.Site] += cell.Counts[(int)events];
        }

        var scanned = new List<BurstCell>();
        foreach (var cell in cells)
        {
            var (runs, seen) = (cell.Counts[(int)trials], cell.Counts[(int)events]);
            if (runs <= 0) continue;
            var factor = (eventsOf[cell.Site] + Prior) / ((trialsOf[cell.Site] * program) + Prior);
            scanned.Add(new BurstCell(cell.Lot, cell.Site, cell.Day, Math.Max(seen, (long)Math.Round(Scale * runs * factor)), seen));
        }

        return scanned;
    }

    /// <summary>Runs of a kind in a burst.</summary>
    public long In(Burst burst, Part part) => cells
        .Where(cell => (burst.Lot ?? cell.Lot) == cell.Lot && (burst.Site ?? cell.Site) == cell.Site && cell.Day >= burst.FirstDay && cell.Day <= burst.LastDay)
        .Sum(cell => cell.Counts[(int)part]);

    /// <summary>The names in order, each numbered by its place.</summary>
    private static string[] Numbered(Dictionary<string, int> numbers)
    {
        string[] names = [.. numbers.Keys.Order(Levels.Order)];
        for (var number = 0; number < names.Length; number++) numbers[names[number]] = number;
        return names;
    }

    private sealed class Entry(int lot, int site, int day)
    {
        public int Lot { get; } = lot;

        public int Site { get; } = site;

        public int Day { get; } = day;

        /// <summary>Runs by kind.</summary>
        public long[] Counts { get; } = new long[5];
    }
}
