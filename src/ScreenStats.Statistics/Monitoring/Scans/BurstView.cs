namespace ScreenStats.Statistics.Monitoring.Scans;

/// <summary>One way to see the cells: by lot and site, by lot, by site, or all together; its slots are groups and days, sorted, with running trials.</summary>
internal sealed class BurstView
{
    private readonly long[] before;
    private readonly int[] groups;
    private readonly int[] days;

    /// <summary>Sorts cells by group and day; cells of the same group and day share a slot.</summary>
    public BurstView(IReadOnlyList<BurstCell> cells, Func<BurstCell, (int? Lot, int? Site)> group)
    {
        var slots = new SortedDictionary<(long Lot, long Site, int Day), long>();
        (long, long, int) Key(BurstCell cell)
        {
            var (lot, site) = group(cell);
            return (lot ?? -1L, site ?? -1L, cell.Day);
        }

        foreach (var cell in cells)
        {
            slots.TryGetValue(Key(cell), out var trials);
            slots[Key(cell)] = checked(trials + cell.Trials);
        }

        var count = slots.Count;
        before = new long[count + 1];
        groups = new int[count];
        days = new int[count];
        Groups = [];
        var positions = new Dictionary<(long, long, int), int>(count);
        var slot = 0;
        (long, long)? last = null;
        foreach (var (key, trials) in slots)
        {
            if (last != (key.Lot, key.Site))
            {
                last = (key.Lot, key.Site);
                Groups.Add((key.Lot < 0 ? null : (int)key.Lot, key.Site < 0 ? null : (int)key.Site));
            }

            positions[key] = slot;
            groups[slot] = Groups.Count - 1;
            days[slot] = key.Day;
            before[slot + 1] = before[slot] + trials;
            slot++;
        }

        SlotOfCell = [.. cells.Select(cell => positions[Key(cell)])];
    }

    public List<(int? Lot, int? Site)> Groups { get; }

    public int[] SlotOfCell { get; }

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
