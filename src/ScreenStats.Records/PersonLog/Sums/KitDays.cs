using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Scanning;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>
/// Counted runs by site, lot, kit and day, with the first row of each. A kit is mostly used up within a day or two, so the runs of its
/// latest day are counted in an array, by the last bits of their codes, and put away when the day changes: 16 bytes, which may be written
/// into a temporary file, for there can be millions of kits. One for each thread; <see cref="KitSums"/> looks at those of all threads.
/// </summary>
internal sealed class KitDays : IDisposable
{
    /// <summary>No row.</summary>
    public const uint NoRecord = uint.MaxValue;

    // A power of two: kits share slots beyond it.
    private const int MostSlots = 1 << 17;
    private const int FewestSlots = 256;

    private Slot[] slots = [];

    /// <summary>True where there are more kits than a program has: serial numbers of single devices, which say nothing here.</summary>
    public bool TooMany { get; private set; }

    /// <summary>What was put away, by <see cref="PartitionOf"/>; all of it after <see cref="PutAll"/>.</summary>
    public PartitionedBuffer<Entry> Put { get; } = new();

    /// <summary>What was written away; null: nothing.</summary>
    public PartitionSpill<Entry>? Written { get; private set; }

    /// <summary>The partition of a kit.</summary>
    public static int PartitionOf(int kit) => kit % PartitionedBuffer<Entry>.Partitions;

    /// <summary>Counts runs, or counts them off.</summary>
    /// <param name="site">Code of the site.</param>
    /// <param name="lot">Code of the lot.</param>
    /// <param name="kit">Code of the kit.</param>
    /// <param name="day">Number of the day.</param>
    /// <param name="runs">How many; below 0 to count off.</param>
    /// <param name="record">The row; <see cref="NoRecord"/> to count off.</param>
    public void Add(int site, int lot, int kit, int day, int runs, uint record)
    {
        if (kit >= slots.Length && !Grow(kit)) return;
        ref var slot = ref slots[kit & (slots.Length - 1)];
        var pair = Keys.SiteAndLot(site, lot);
        if (slot.Kit == kit && slot.Pair == pair && slot.Day == day)
        {
            slot.Runs += runs;
            if (record < slot.Record) slot.Record = record;
            return;
        }

        PutAway(slot);
        slot = new() { Pair = pair, Kit = kit, Day = day, Runs = runs, Record = record, Used = true };
    }

    /// <summary>Puts the latest days away too.</summary>
    public void PutAll()
    {
        foreach (ref readonly var slot in slots.AsSpan()) PutAway(slot);
        slots = [];
    }

    /// <summary>Writes away what was put away.</summary>
    public void WriteTo(SpillRoom room) => (Written ??= room.Create<Entry>()).Write(Put);

    /// <summary>Gives memory and disk back.</summary>
    public void Dispose()
    {
        Put.Dispose();
        Written?.Dispose();
    }

    private void PutAway(in Slot slot)
    {
        if (!slot.Used) return;
        // Hardly ever in several parts: a kit holds few runs.
        for (var left = slot.Runs; ;)
        {
            var runs = Math.Clamp(left, short.MinValue, short.MaxValue);
            Put.Add(PartitionOf(slot.Kit)) = new(Keys.KitFirst(slot.Kit, slot.Pair), slot.Record, (ushort)Keys.Day(slot.Day), (short)runs);
            left -= runs;
            if (left == 0) return;
        }
    }

    private bool Grow(int kit)
    {
        if (kit >= LevelLimits.MostKits)
        {
            TooMany = true;
            return false;
        }

        if (slots.Length >= MostSlots) return true;
        // Where a kit stands depends on how many slots there are: all start afresh.
        var known = slots;
        slots = new Slot[Math.Clamp((int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)kit + 1), FewestSlots, MostSlots)];
        foreach (ref readonly var slot in known.AsSpan())
        {
            if (slot.Used) slots[slot.Kit & (slots.Length - 1)] = slot;
        }

        return true;
    }

    /// <summary>Runs of a kit on a day; of one day there may be several.</summary>
    /// <param name="Key">As <see cref="Keys.KitFirst"/>.</param>
    /// <param name="Record">The first row; <see cref="NoRecord"/> where runs were only counted off.</param>
    /// <param name="Day">As <see cref="Keys.Day"/>.</param>
    /// <param name="Runs">How many.</param>
    [StructLayout(LayoutKind.Sequential, Pack = 4)]
    internal readonly record struct Entry(ulong Key, uint Record, ushort Day, short Runs);

    private struct Slot
    {
        public ulong Pair;
        public int Kit;
        public int Day;
        public int Runs;
        public uint Record;
        public bool Used;
    }
}
