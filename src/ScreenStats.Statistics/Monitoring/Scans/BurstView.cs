using System.Runtime.CompilerServices;

namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>One way to see the cells: by lot and site, by lot, by site, or all together; its slots are groups and days, sorted, with running trials.</summary>
internal sealed class BurstView
{
    private readonly ulong[] all;
    private readonly long[] before;
    private readonly int[] groups;
    private readonly int[] days;

    /// <summary>Sorts cells by group and day; cells of the same group and day share a slot.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public BurstView(BurstCell[] cells, bool byLot, bool bySite)
    {
        // Lot above site, both counted from 1; 0 is all of them.
        var own = new ulong[cells.Length];
        for (var i = 0; i < own.Length; i++) own[i] = ((byLot ? (ulong)cells[i].Lot + 1 : 0) << 32) | (bySite ? (ulong)cells[i].Site + 1 : 0);
        all = own.AsSpan().ToArray();
        Array.Sort(all);
        var different = 0;
        for (var i = 0; i < all.Length; i++)
        {
            if (i == 0 || all[i] != all[different - 1]) all[different++] = all[i];
        }

        Array.Resize(ref all, different);
        // The group above the day, the day's sign turned so that it sorts as a number without one.
        var keys = new ulong[cells.Length];
        var order = new int[cells.Length];
        for (var i = 0; i < order.Length; i++) (keys[i], order[i]) = (((ulong)Array.BinarySearch(all, own[i]) << 32) | ((uint)cells[i].Day ^ 0x80000000U), i);
        Array.Sort(keys, order);
        var count = 0;
        for (var i = 0; i < keys.Length; i++) count += i == 0 || keys[i] != keys[i - 1] ? 1 : 0;
        before = new long[count + 1];
        groups = new int[count];
        days = new int[count];
        SlotOfCell = new int[cells.Length];
        var slot = -1;
        for (var i = 0; i < keys.Length; i++)
        {
            if (i == 0 || keys[i] != keys[i - 1])
            {
                slot++;
                (groups[slot], days[slot], before[slot + 1]) = ((int)(keys[i] >> 32), cells[order[i]].Day, before[slot]);
            }

            before[slot + 1] = checked(before[slot + 1] + cells[order[i]].Trials);
            SlotOfCell[order[i]] = slot;
        }
    }

    public int[] SlotOfCell { get; }

    /// <summary>Number of slots.</summary>
    public int Slots => days.Length;

    /// <summary>The lot of a group; null where it is all lots.</summary>
    public int? Lot(int group) => all[group] >> 32 is > 0 and var lot ? (int)(lot - 1) : null;

    /// <summary>The site of a group; null where it is all sites.</summary>
    public int? Site(int group) => (uint)all[group] is > 0 and var site ? (int)(site - 1) : null;

    /// <summary>The group, the day and the trials before a slot.</summary>
    public (int Group, int Day, long Before) At(int slot) => (groups[slot], days[slot], before[slot]);

    /// <summary>
    /// For each number of events the fewest trials of a window that holds as many: of all windows of one group that start and end on a day with an
    /// event and are not longer than allowed. A window's likelihood ratio falls with its trials, so no other window can be the strongest.
    /// </summary>
    /// <param name="sorted">The slots of all events, sorted.</param>
    /// <param name="longest">The longest window in days.</param>
    /// <param name="fewest">By number of events, lowered where a window has fewer trials.</param>
    /// <param name="scratch">At least as long as the events.</param>
    /// <param name="found">Told of each window that lowers a figure, by its first and last slot; or null.</param>
    // Compiled for good at once: a run is too short for the compiler to come back to it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Fewest(ReadOnlySpan<int> sorted, int longest, long[] fewest, Scratch scratch, Action<int, int, int>? found)
    {
        var count = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            if (count == 0 || scratch.Slots[count - 1] != sorted[i]) scratch.Slots[count++] = sorted[i];
            scratch.Through[count - 1] = i + 1;
        }

        for (var i = 0; i < count; i++)
        {
            var first = scratch.Slots[i];
            var (group, start, lead) = (groups[first], before[first], i == 0 ? 0 : scratch.Through[i - 1]);
            var end = (long)days[first] + longest;
            for (var j = i; j < count; j++)
            {
                var last = scratch.Slots[j];
                if (groups[last] != group || days[last] >= end) break;
                var inside = scratch.Through[j] - lead;
                var trials = before[last + 1] - start;
                if (trials >= fewest[inside]) continue;
                fewest[inside] = trials;
                found?.Invoke(inside, first, last);
            }
        }
    }

    /// <summary>Room for the slots with events and the events up to and with each.</summary>
    internal sealed class Scratch(int events)
    {
        public int[] Slots { get; } = new int[events];

        public int[] Through { get; } = new int[events];
    }
}
