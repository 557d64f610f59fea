using ScreenStats.Counting.Rules;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog.Checks;

/// <summary>What the checks of conduct and sense need of counted rows one by one. One for each thread.</summary>
internal sealed class RowChecks
{
    private uint[] firstOfSite = [];
    private uint[] firstOfLot = [];
    private long[] minutes = [];

    public FirstRecords Expired { get; } = new();

    public FirstRecords ReadBeforeCollected { get; } = new();

    public FirstRecords ReadTooEarly { get; } = new();

    public FirstRecords ReadTooLate { get; } = new();

    /// <summary>The kits, which are not added up here: <see cref="KitSums"/> looks at those of all threads.</summary>
    public KitDays KitDays { get; } = new();

    /// <summary>Takes a counted row, or counts one off.</summary>
    /// <param name="row">The row.</param>
    /// <param name="day">Number of its local day.</param>
    /// <param name="sign">1 or -1.</param>
    public void Take(in RunRow row, int day, int sign)
    {
        if (row.Site >= firstOfSite.Length) Grow(row.Site);
        if (!row.DateOnly)
        {
            var second = (uint)(row.Instant - RunCounter.EarliestInstant + (60L * row.OffsetMinutes));
            minutes[(row.Site * 60) + (int)(second / 60 % 60)] += sign;
        }

        if (row.MinutesToReading is { } read && ConductRule.IsReadBeforeCollected(read)) ReadBeforeCollected.Add(row.Record, sign);
        if (row.Kit != 0) KitDays.Add(row.Site, row.Lot, row.Kit, day, sign, sign > 0 ? row.Record : KitDays.NoRecord);
        if (sign < 0) return;
        if (row.Record < firstOfSite[row.Site]) firstOfSite[row.Site] = row.Record;
        if (row.Lot >= firstOfLot.Length) GrowLots(row.Lot);
        if (row.Record < firstOfLot[row.Lot]) firstOfLot[row.Lot] = row.Record;
    }

    /// <summary>Says that a site and a lot have counted rows, which were counted elsewhere.</summary>
    public void Meet(int site, int lot, uint record)
    {
        if (site >= firstOfSite.Length) Grow(site);
        if (lot >= firstOfLot.Length) GrowLots(lot);
        firstOfSite[site] = Math.Min(firstOfSite[site], record);
        firstOfLot[lot] = Math.Min(firstOfLot[lot], record);
    }

    /// <summary>Adds rows of a site and minute of the hour that were counted elsewhere.</summary>
    public void AddMinutes(int site, int minute, long rows)
    {
        if (site >= firstOfSite.Length) Grow(site);
        minutes[(site * 60) + minute] += rows;
    }

    /// <summary>First row of a site; the largest number where there is none.</summary>
    public uint FirstOfSite(int site) => site < firstOfSite.Length ? firstOfSite[site] : uint.MaxValue;

    /// <summary>First row of a lot; the largest number where there is none.</summary>
    public uint FirstOfLot(int lot) => lot < firstOfLot.Length ? firstOfLot[lot] : uint.MaxValue;

    /// <summary>Runs of a site with a time of day, by minute of the hour.</summary>
    public ReadOnlySpan<long> Minutes(int site) => site < firstOfSite.Length ? minutes.AsSpan(site * 60, 60) : new long[60];

    public void AddAll(RowChecks other)
    {
        Expired.AddAll(other.Expired);
        ReadBeforeCollected.AddAll(other.ReadBeforeCollected);
        ReadTooEarly.AddAll(other.ReadTooEarly);
        ReadTooLate.AddAll(other.ReadTooLate);
        if (other.firstOfSite.Length > firstOfSite.Length) Grow(other.firstOfSite.Length - 1);
        if (other.firstOfLot.Length > firstOfLot.Length) GrowLots(other.firstOfLot.Length - 1);
        for (var site = 0; site < other.firstOfSite.Length; site++) firstOfSite[site] = Math.Min(firstOfSite[site], other.firstOfSite[site]);
        for (var lot = 0; lot < other.firstOfLot.Length; lot++) firstOfLot[lot] = Math.Min(firstOfLot[lot], other.firstOfLot[lot]);
        for (var at = 0; at < other.minutes.Length; at++) minutes[at] += other.minutes[at];
    }

    private void Grow(int site)
    {
        Grow(ref firstOfSite, site);
        Array.Resize(ref minutes, 60 * firstOfSite.Length);
    }

    private void GrowLots(int lot) => Grow(ref firstOfLot, lot);

    private static void Grow(ref uint[] records, int level)
    {
        var known = records.Length;
        Array.Resize(ref records, Math.Max(level + 1, Math.Max(64, 2 * known)));
        records.AsSpan(known).Fill(uint.MaxValue);
    }
}
