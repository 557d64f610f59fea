using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>
/// The sites and lots with which each kit was met, and the first row of each. Nearly every kit is met with one: that stands in
/// an array, the others in a table. One for each thread.
/// </summary>
internal sealed class KitLots
{
    private const ulong SiteAndLot = (1ul << (LevelLimits.SiteBits + LevelLimits.LotBits)) - 1;

    private readonly Dictionary<ulong, uint> others = [];
    private (ulong Pair, uint Record)[] kits = [];

    /// <summary>Adds a row with a kit. Beyond <see cref="LevelLimits.MostKits"/> kits are serial numbers of single devices and say nothing.</summary>
    public void Add(int site, int lot, int kit, uint record)
    {
        if (kit >= kits.Length && !Grow(kit)) return;
        var pair = Keys.SiteAndLot(site, lot) + 1;
        ref var met = ref kits[kit];
        if (met.Pair == pair)
        {
            if (record < met.Record) met.Record = record;
        }
        else if (met.Pair == 0) met = (pair, record);
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
        for (var kit = 0; kit < kits.Length; kit++)
        {
            if (kits[kit].Pair != 0) yield return (((kits[kit].Pair - 1) & SiteAndLot) << LevelLimits.KitBits | (uint)kit, kits[kit].Record);
        }

        foreach (var (key, record) in others) yield return (key, record);
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
        Array.Resize(ref kits, Math.Max(kit + 1, Math.Max(256, 2 * kits.Length)));
        return true;
    }
}
