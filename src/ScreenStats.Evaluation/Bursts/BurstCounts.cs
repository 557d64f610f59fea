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
    private readonly Dictionary<(int Lot, int Site, int Day), long[]> cells = [];
    private readonly string[] lots;
    private readonly string[] sites;

    public BurstCounts(Tally tally)
    {
        lots = [.. tally.Cells.Screens.Select(cell => cell.Lot).Distinct(StringComparer.Ordinal).Order(Levels.Order)];
        sites = [.. tally.Cells.Screens.Select(cell => cell.Site).Distinct(StringComparer.Ordinal).Order(Levels.Order)];
        var ofLot = lots.Select((name, index) => (name, index)).ToDictionary(pair => pair.name, pair => pair.index, StringComparer.Ordinal);
        var ofSite = sites.Select((name, index) => (name, index)).ToDictionary(pair => pair.name, pair => pair.index, StringComparer.Ordinal);
        foreach (var cell in tally.Cells.Screens)
        {
            var key = (ofLot[cell.Lot], ofSite[cell.Site], cell.Day.DayNumber);
            if (!cells.TryGetValue(key, out var counts)) cells.Add(key, counts = new long[5]);
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
    public long Total(Part part) => cells.Values.Sum(counts => counts[(int)part]);

    /// <summary>
    /// The cells of the scan: trials in proportion to the events that the site's own rate expects. The rate of a site is taken as if five more events had been
    /// seen there at the program's rate, so that a site with few runs is near the program.
    /// </summary>
    public List<BurstCell> Cells(Part trials, Part events)
    {
        var program = (double)Total(events) / Math.Max(1, Total(trials));
        if (program <= 0) return [];
        var sums = new (long Trials, long Events)[sites.Length];
        foreach (var (key, counts) in cells)
        {
            sums[key.Site].Trials += counts[(int)trials];
            sums[key.Site].Events += counts[(int)events];
        }

        var factors = Array.ConvertAll(sums, site => (site.Events + Prior) / ((site.Trials * program) + Prior));
        return
        [
            .. cells.Where(pair => pair.Value[(int)trials] > 0).Select(pair =>
            {
                var seen = pair.Value[(int)events];
                return new BurstCell(pair.Key.Lot, pair.Key.Site, pair.Key.Day, Math.Max(seen, (long)Math.Round(Scale * pair.Value[(int)trials] * factors[pair.Key.Site])), seen);
            }),
        ];
    }

    /// <summary>Runs of a kind in a burst.</summary>
    public long In(Burst burst, Part part) => cells
        .Where(pair => (burst.Lot ?? pair.Key.Lot) == pair.Key.Lot && (burst.Site ?? pair.Key.Site) == pair.Key.Site && pair.Key.Day >= burst.FirstDay && pair.Key.Day <= burst.LastDay)
        .Sum(pair => pair.Value[(int)part]);
}
