using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.PersonLog.Sums;

/// <summary>
/// Counted runs by site, lot, kit and day. A kit is mostly used up within a day or two, so the runs of its latest day are counted in an
/// array, by the last bits of their codes, and put away when the day changes. One for each thread.
/// </summary>
internal sealed class KitDays
{
    private const int FewestToMerge = 1 << 20;

    // A power of two: kits share slots beyond it.
    private const int MostSlots = 1 << 17;
    private const int FewestSlots = 256;

    private readonly List<Entry> put = [];
    private Slot[] slots = [];
    private int merged;
    private int mergeAt = FewestToMerge;

    /// <summary>True where there are more kits than a program has: serial numbers of single devices, which say nothing here.</summary>
    public bool TooMany { get; private set; }

    /// <summary>Counts a run, or one off.</summary>
    public void Add(int site, int lot, int kit, int day, int sign)
    {
        if (kit >= slots.Length && !Grow(kit)) return;
        ref var slot = ref slots[kit & (slots.Length - 1)];
        var pair = Keys.SiteAndLot(site, lot);
        if (slot.Kit == kit && slot.Pair == pair && slot.Day == day)
        {
            slot.Runs += sign;
            return;
        }

        if (slot.Runs != 0) Put(slot.Entry);
        slot = new() { Pair = pair, Kit = kit, Day = day, Runs = sign };
    }

    public void AddAll(KitDays other)
    {
        TooMany |= other.TooMany;
        foreach (var entry in other.put) Put(entry);
        foreach (ref readonly var slot in other.slots.AsSpan())
        {
            if (slot.Runs != 0) Put(slot.Entry);
        }
    }

    /// <summary>Every site, lot, kit (as <see cref="Keys.Kit"/>) and day with its runs, each once, in order of these; none where there are too many kits.</summary>
    public ReadOnlySpan<Entry> InOrder()
    {
        PutAll();
        Merge();
        return TooMany ? [] : CollectionsMarshal.AsSpan(put);
    }

    /// <summary>The same in any order, and some in several parts.</summary>
    public ReadOnlySpan<Entry> All()
    {
        PutAll();
        return TooMany ? [] : CollectionsMarshal.AsSpan(put);
    }

    private void PutAll()
    {
        foreach (ref var slot in slots.AsSpan())
        {
            if (slot.Runs != 0) put.Add(slot.Entry);
            slot = default;
        }
    }

    private void Put(Entry entry)
    {
        put.Add(entry);
        if (put.Count < mergeAt) return;
        Merge();
        mergeAt = Math.Max(FewestToMerge, 2 * put.Count);
    }

    private void Merge()
    {
        if (merged == put.Count) return;
        put.Sort(static (a, b) => a.Key != b.Key ? a.Key.CompareTo(b.Key) : a.Day.CompareTo(b.Day));
        var entries = CollectionsMarshal.AsSpan(put);
        var kept = 0;
        for (var i = 0; i < entries.Length;)
        {
            var (first, runs) = (entries[i], 0);
            for (; i < entries.Length && entries[i].Key == first.Key && entries[i].Day == first.Day; i++) runs += entries[i].Runs;
            if (runs != 0) entries[kept++] = first with { Runs = runs };
        }

        put.RemoveRange(kept, put.Count - kept);
        merged = kept;
    }

    private bool Grow(int kit)
    {
        if (kit >= LevelLimits.MostKits)
        {
            TooMany = true;
            return false;
        }

        if (slots.Length < MostSlots) Array.Resize(ref slots, Math.Clamp((int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)kit + 1), FewestSlots, MostSlots));
        return true;
    }

    /// <summary>Runs of a kit on a day.</summary>
    internal readonly record struct Entry(ulong Key, int Day, int Runs);

    private struct Slot
    {
        public ulong Pair;
        public int Kit;
        public int Day;
        public int Runs;

        public readonly Entry Entry => new((Pair << LevelLimits.KitBits) | (uint)Kit, Day, Runs);
    }
}
