using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>
/// The sites and lots with which each kit was met, and the first row of each. Nearly every kit is met with one: that stands in
/// an array, the others in a table. One for each thread.
/// </summary>
internal sealed class KitLots
{
    private const ulong SiteAndLot = (1ul << (LevelLimits.SiteBits + LevelLimits.LotBits)) - 1;

    // Pages: nothing is copied as kits are met, and hardly more is held than is used.
    private const int PageLength = 1 << 10;

    private readonly Dictionary<ulong, uint> others = [];
    private readonly List<Met[]> pages = [];
    private int count;

    /// <summary>Adds a row with a kit. Beyond <see cref="LevelLimits.MostKits"/> kits are serial numbers of single devices and say nothing.</summary>
    public void Add(int site, int lot, int kit, uint record)
    {
        if (kit >= count && !Grow(kit)) return;
        var pair = Keys.SiteAndLot(site, lot) + 1;
        ref var met = ref At(kit);
        if (met.Pair == pair)
        {
            if (record < met.Record) met.Record = record;
        }
        else if (met.Pair == 0) met = new() { Pair = pair, Record = record };
        else AddOther(Keys.Kit(site, lot, kit), record);
    }

    public void AddAll(KitLots other)
    {
        foreach (var (key, record) in other.All())
        {
            var siteAndLot = key >> LevelLimits.KitBits;
            Add((int)(siteAndLot >> LevelLimits.LotBits), (int)(siteAndLot & ((1 << LevelLimits.LotBits) - 1)), (int)(key & ((1 << LevelLimits.KitBits) - 1)), record);
        }
    }

    /// <summary>Every combination of site, lot and kit, as <see cref="Keys.Kit"/>, with its first row.</summary>
    public IEnumerable<(ulong Key, uint Record)> All()
    {
        for (var kit = 0; kit < count; kit++)
        {
            var met = At(kit);
            if (met.Pair != 0) yield return (((met.Pair - 1) & SiteAndLot) << LevelLimits.KitBits | (uint)kit, met.Record);
        }

        foreach (var (key, record) in others) yield return (key, record);
    }

    /// <summary>The first row of a combination, as <see cref="Keys.Kit"/>; null where it was not met.</summary>
    public uint? FirstOf(ulong key)
    {
        var kit = (int)(key & ((1 << LevelLimits.KitBits) - 1));
        if (kit < count && At(kit) is var met && met.Pair == (key >> LevelLimits.KitBits) + 1) return met.Record;
        return others.TryGetValue(key, out var first) ? first : null;
    }

    /// <summary>The kits that were met with more than one site or lot.</summary>
    public HashSet<int> WithSeveral() => [.. others.Keys.Select(key => (int)(key & ((1 << LevelLimits.KitBits) - 1)))];

    private void AddOther(ulong key, uint record)
    {
        if (!others.TryGetValue(key, out var first) || record < first) others[key] = record;
    }

    private bool Grow(int kit)
    {
        if (kit >= LevelLimits.MostKits) return false;
        while (kit >= count)
        {
            pages.Add(new Met[PageLength]);
            count += PageLength;
        }

        return true;
    }

    private ref Met At(int kit) => ref pages[kit / PageLength][kit % PageLength];

    [StructLayout(LayoutKind.Sequential, Pack = 4)]
    private struct Met
    {
        public ulong Pair;
        public uint Record;
    }
}
