using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog;

/// <summary>Turns tables of packed codes into cells, in canonical order, so that the tally has nothing left to sort.</summary>
internal sealed class CubeWriter
{
    private const int LowBits = Keys.DayBits + 3 + 2 + 2 + Keys.FollowUpBits + 1;

    private readonly ShapeTable shapes;
    private readonly Ranking sites;
    private readonly Ranking lots;
    private readonly Ranking operators;
    private readonly ulong[] pairs;
    private readonly int[] pairOfShape;
    private readonly OutbreakDays outbreaks;

    public CubeWriter(ShapeTable shapes, Vocabularies vocabularies, ProgramSettings settings)
    {
        this.shapes = shapes;
        outbreaks = new(settings, vocabularies);
        Vocabularies = vocabularies;
        (sites, lots, operators) = (new(vocabularies.Sites), new(vocabularies.Lots), new(vocabularies.Operators));
        var all = new ulong[shapes.Count];
        for (var code = 0; code < all.Length; code++) all[code] = Keys.SiteAndLot(sites.RankOf(shapes[code].Site), lots.RankOf(shapes[code].Lot));
        pairs = [.. all.Distinct().Order()];
        pairOfShape = [.. all.Select(pair => Array.BinarySearch(pairs, pair))];
    }

    public Ranking Sites => sites;

    public Ranking Lots => lots;

    public Vocabularies Vocabularies { get; }

    /// <summary>The outbreaks of the program file.</summary>
    public OutbreakDays Outbreaks => outbreaks;

    /// <summary>Counted runs: all of them by shape and day, and those with a follow-up.</summary>
    public ImmutableArray<ScreenCell> Screens(CountTable screens, CountTable followUps)
    {
        var (plain, plainCounts) = screens.ToArrays();
        var (followed, followedCounts) = followUps.ToArrays();
        var keys = new ulong[plain.Length + (2 * followed.Length)];
        var counts = new long[keys.Length];
        for (var i = 0; i < plain.Length; i++) (keys[i], counts[i]) = (ScreenKey(plain[i], FollowUp.None), plainCounts[i]);
        for (var i = 0; i < followed.Length; i++)
        {
            var key = followed[i];
            var followUp = (FollowUp)Keys.Take(ref key, Keys.FollowUpBits);
            var at = plain.Length + (2 * i);
            (keys[at], counts[at]) = (ScreenKey(key, followUp), followedCounts[i]);
            (keys[at + 1], counts[at + 1]) = (ScreenKey(key, FollowUp.None), -followedCounts[i]);
        }

        (keys, counts) = SortedSums.Of(keys, counts);
        var cells = new ScreenCell[keys.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            var key = keys[i];
            var occasion = (Occasion)Keys.Take(ref key, 1);
            var followUp = (FollowUp)Keys.Take(ref key, Keys.FollowUpBits);
            var outcome = (Outcome)Keys.Take(ref key, 2);
            var collection = (CollectedBy)Keys.Take(ref key, 2);
            var specimen = (Specimen)Keys.Take(ref key, 3);
            var day = Keys.DayOf(key);
            var (site, lot) = Pair(key >> Keys.DayBits);
            cells[i] = new(site, lot, day, specimen, collection, outcome, followUp, counts[i], occasion);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(cells);
    }

    /// <summary>Counted runs by operator, with the follow-ups of single runs.</summary>
    /// <param name="table">Counts by operator, site, day, outcome and mark of an outbreak.</param>
    /// <param name="followed">Runs with a follow-up: their key in that table, and the follow-up.</param>
    public ImmutableArray<OperatorCell> Operators(CountTable table, List<(ulong Key, FollowUp FollowUp)> followed)
    {
        var (plain, plainCounts) = table.ToArrays();
        var keys = new ulong[plain.Length + (2 * followed.Count)];
        var counts = new long[keys.Length];
        for (var i = 0; i < plain.Length; i++) (keys[i], counts[i]) = (OperatorKey(plain[i], FollowUp.None), plainCounts[i]);
        for (var i = 0; i < followed.Count; i++)
        {
            var at = plain.Length + (2 * i);
            (keys[at], counts[at]) = (OperatorKey(followed[i].Key, followed[i].FollowUp), 1);
            (keys[at + 1], counts[at + 1]) = (OperatorKey(followed[i].Key, FollowUp.None), -1);
        }

        (keys, counts) = SortedSums.Of(keys, counts);
        var cells = new OperatorCell[keys.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            var key = keys[i];
            var occasion = (Occasion)Keys.Take(ref key, 1);
            var followUp = (FollowUp)Keys.Take(ref key, Keys.FollowUpBits);
            var outcome = (Outcome)Keys.Take(ref key, 2);
            var day = Keys.DayOf((ulong)Keys.Take(ref key, Keys.RunDayBits));
            var site = sites.TextOfRank(Keys.Take(ref key, LevelLimits.SiteBits));
            cells[i] = new(operators.TextOfRank((int)key), site, day, outcome, followUp, counts[i], occasion);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(cells);
    }

    public ImmutableArray<CaseCell> Cases(CountTable table)
    {
        var (keys, counts) = table.ToSorted(key =>
        {
            var day = key & ((1 << Keys.DayBits) - 1);
            var code = (int)(key >> Keys.DayBits);
            return (((((ulong)pairOfShape[code] << Keys.DayBits) | day) << 2) | (ulong)shapes[code].Outcome);
        });
        return [.. keys.Select((key, i) =>
        {
            var outcome = (Outcome)Keys.Take(ref key, 2);
            var (site, lot) = Pair(key >> Keys.DayBits);
            return new CaseCell(site, lot, Keys.DayOf(key), outcome, counts[i]);
        })];
    }

    /// <summary>Cells by site and days.</summary>
    public ImmutableArray<T> SiteAndDays<T>(CountTable table, Func<string, int, long, T> cell)
    {
        var (keys, counts) = table.ToSorted(key =>
            ((ulong)sites.RankOf((int)(key >> Keys.DayBits)) << Keys.DayBits) | (key & ((1 << Keys.DayBits) - 1)));
        return [.. keys.Select((key, i) =>
        {
            var days = Keys.Take(ref key, Keys.DayBits);
            return cell(sites.TextOfRank((int)key), days, counts[i]);
        })];
    }

    public ImmutableArray<ConductCell> Conduct(CountTable table)
    {
        var (keys, counts) = table.ToSorted(key =>
        {
            var day = Keys.DayNumber(key);
            key >>= Keys.DayBits;
            var lot = lots.RankOf(Keys.Take(ref key, LevelLimits.LotBits));
            var site = sites.RankOf(Keys.Take(ref key, LevelLimits.SiteBits));
            return Keys.Conduct((ConductKind)key, site, lot, day);
        });
        return [.. keys.Select((key, i) =>
        {
            var day = Keys.DayOf(key);
            key >>= Keys.DayBits;
            var lot = lots.TextOfRank(Keys.Take(ref key, LevelLimits.LotBits));
            var site = sites.TextOfRank(Keys.Take(ref key, LevelLimits.SiteBits));
            return new ConductCell((ConductKind)key, site, lot, day, counts[i]);
        })];
    }

    public ImmutableArray<RepeatCell> Repeats(CountTable table)
    {
        var (keys, counts) = table.ToSorted(key =>
            ((ulong)sites.RankOf((int)(key >> (Keys.DayBits + 3))) << (Keys.DayBits + 3)) | (key & ((1 << (Keys.DayBits + 3)) - 1)));
        var cells = ImmutableArray.CreateBuilder<RepeatCell>();
        for (var i = 0; i < keys.Length;)
        {
            var group = keys[i] >> 1;
            var (due, done) = (0L, 0L);
            for (; i < keys.Length && keys[i] >> 1 == group; i++)
            {
                due += counts[i];
                if ((keys[i] & 1) != 0) done += counts[i];
            }

            cells.Add(new(sites.TextOfRank((int)(group >> (Keys.DayBits + 2))), Keys.DayOf(group >> 2), (Outcome)(group & 3), due, done));
        }

        return cells.ToImmutable();
    }

    /// <summary>Counted runs with a kit.</summary>
    /// <param name="table">Counts by site, lot and day.</param>
    public ImmutableArray<KitCell> Kits(CountTable table)
    {
        var (keys, counts) = table.ToSorted(key =>
        {
            var day = (ulong)Keys.Take(ref key, Keys.DayBits);
            var (site, lot) = Keys.SiteAndLotOf(key);
            return Keys.Run(sites.RankOf(site), lots.RankOf(lot), day);
        });
        return [.. keys.Select((key, i) =>
        {
            var day = Keys.DayOf(key);
            var (site, lot) = Keys.SiteAndLotOf(key >> Keys.DayBits);
            return new KitCell(sites.TextOfRank(site), lots.TextOfRank(lot), day, counts[i]);
        })];
    }

    public static ImmutableArray<ParticipationCell> Participation(CountTable table)
    {
        var (keys, counts) = table.ToSorted(key => key);
        return [.. keys.Select((key, i) => new ParticipationCell((int)key, counts[i]))];
    }

    private ulong ScreenKey(ulong key, FollowUp followUp)
    {
        var day = (ulong)Keys.Take(ref key, Keys.DayBits);
        var shape = shapes[(int)key];
        return ((ulong)pairOfShape[(int)key] << LowBits) | (day << (LowBits - Keys.DayBits))
            | ((ulong)shape.Specimen << (5 + Keys.FollowUpBits)) | ((ulong)shape.Collection << (3 + Keys.FollowUpBits))
            | ((ulong)shape.Outcome << (1 + Keys.FollowUpBits)) | ((ulong)followUp << 1) | (ulong)outbreaks.Of(shape.Outbreak, shape.Site, Keys.DayNumber(day));
    }

    private ulong OperatorKey(ulong key, FollowUp followUp)
    {
        var mark = (OutbreakMark)Keys.Take(ref key, 2);
        var outcome = (Outcome)Keys.Take(ref key, 2);
        var day = (ulong)Keys.Take(ref key, Keys.RunDayBits);
        var site = Keys.Take(ref key, LevelLimits.SiteBits);
        var person = (ulong)operators.RankOf((int)key);
        var place = (person << LevelLimits.SiteBits) | (uint)sites.RankOf(site);
        return ((((place << Keys.RunDayBits | day) << 2 | (ulong)outcome) << Keys.FollowUpBits | (ulong)followUp) << 1) | (ulong)outbreaks.Of(mark, site, Keys.DayNumber(day));
    }

    private (string Site, string Lot) Pair(ulong rank)
    {
        var pair = pairs[rank];
        var lot = Keys.Take(ref pair, LevelLimits.LotBits);
        return (sites.TextOfRank((int)pair), lots.TextOfRank(lot));
    }
}
