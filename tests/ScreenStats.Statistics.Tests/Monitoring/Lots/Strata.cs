using ScreenStats.Statistics.Monitoring.Lots;

namespace ScreenStats.Statistics.Tests.Monitoring.Lots;

/// <summary>Reads and draws the strata of one lot.</summary>
internal static class Strata
{
    public static readonly Gen<LotStratum[]> Whole = Gen.Select(Gen.Long[0, 60], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1])
        .Select((trials, draws, mine, others) =>
        {
            var lot = (long)(draws * trials);
            var events = (long)(mine * mine * (lot + 0.99));
            return new LotStratum(events, lot, events + (long)(others * others * (trials - lot + 0.99)), trials);
        }).Array[0, 12];

    public static readonly Gen<SharedStratum[]> Shared = Gen.Select(Gen.Long[0, 9], Gen.Double[0.001, 0.999], Gen.Double[0, 1])
        .Select((events, share, mine) => new SharedStratum((long)(mine * (events + 0.99)), events, share)).Array[0, 25];

    public static LotStratum[] ReadWhole(ReferenceRow row)
    {
        var (x, n, k, all) = (row.Numbers("lot_events"), row.Numbers("lot_trials"), row.Numbers("events"), row.Numbers("trials"));
        return [.. x.Select((own, i) => new LotStratum((long)own, (long)n[i], (long)k[i], (long)all[i]))];
    }

    public static SharedStratum[] ReadShared(ReferenceRow row)
    {
        var (x, share, k) = (row.Numbers("lot_events"), row.Numbers("lot_trials"), row.Numbers("events"));
        return [.. x.Select((own, i) => new SharedStratum((long)own, (long)k[i], share[i]))];
    }
}
