using System.Runtime.InteropServices;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>
/// Brings the rows of one partition into groups of one person each, and each group into order of time and record. Buffers are
/// used again for the next partition, so one for each thread.
/// </summary>
internal sealed class PersonGrouping
{
    private ulong[] people = new ulong[1024];
    private int[] slots = new int[1024];
    private LogEntry[] entries = [];
    private LogEntry[] scratch = [];
    private int[] personOf = [];
    private int[] starts = [];
    private readonly List<int> runEnds = [];

    /// <summary>Number of people in the partition.</summary>
    public int Count { get; private set; }

    /// <summary>The rows of one of them, in order.</summary>
    public Span<LogEntry> this[int person]
    {
        get
        {
            var start = person == 0 ? 0 : starts[person - 1];
            var rows = entries.AsSpan(start, starts[person] - start);
            Sort(rows);
            return rows;
        }
    }

    /// <summary>Gathers the rows of a piece, with each sink's codes translated.</summary>
    public void Gather(LogPiece piece, int[][] codes)
    {
        var total = piece.Count;
        if (entries.Length < total)
        {
            entries = NewBuffer(total);
            personOf = new int[entries.Length];
        }

        Array.Clear(slots);
        Count = 0;
        if (starts.Length < people.Length) starts = new int[people.Length];
        Array.Clear(starts);
        var at = 0;
        foreach (var (_, chunk) in piece.Chunks)
        {
            foreach (ref readonly var entry in chunk.AsSpan())
            {
                var person = PersonOf(entry.Person);
                personOf[at++] = person;
                starts[person]++;
            }
        }

        var sum = 0;
        for (var person = 0; person < Count; person++) (starts[person], sum) = (sum, sum + starts[person]);
        at = 0;
        foreach (var (sink, chunk) in piece.Chunks)
        {
            var code = codes[sink];
            foreach (ref readonly var entry in chunk.AsSpan())
            {
                ref var placed = ref entries[starts[personOf[at++]]++];
                placed = entry;
                placed.CodeAndMeaning = ((uint)code[entry.Code] << 8) | entry.Meaning;
            }
        }
    }

    private static LogEntry[] NewBuffer(int length) => GC.AllocateUninitializedArray<LogEntry>(length + (length / 4));

    private int PersonOf(ulong hash)
    {
        var mask = slots.Length - 1;
        for (var slot = (int)((hash * 0xC2B2AE3D27D4EB4Ful) >> 33) & mask; ; slot = (slot + 1) & mask)
        {
            var person = slots[slot] - 1;
            if (person < 0) return Add(hash, slot);
            if (people[person] == hash) return person;
        }
    }

    private int Add(ulong hash, int slot)
    {
        if (Count == people.Length)
        {
            Array.Resize(ref people, 2 * Count);
            Array.Resize(ref starts, 2 * Count);
        }

        people[Count] = hash;
        slots[slot] = ++Count;
        if (2 * Count > slots.Length) Grow();
        return Count - 1;
    }

    private void Grow()
    {
        slots = new int[2 * slots.Length];
        var mask = slots.Length - 1;
        for (var person = 0; person < Count; person++)
        {
            var slot = (int)((people[person] * 0xC2B2AE3D27D4EB4Ful) >> 33) & mask;
            while (slots[slot] != 0) slot = (slot + 1) & mask;
            slots[slot] = person + 1;
        }
    }

    // A person's rows arrive as a few ascending runs, one for each batch of a thread: they are merged, pair by pair.
    private void Sort(Span<LogEntry> rows)
    {
        runEnds.Clear();
        for (var i = 1; i < rows.Length; i++)
        {
            if (rows[i].Order < rows[i - 1].Order) runEnds.Add(i);
        }

        if (runEnds.Count == 0) return;
        if (runEnds.Count > 8 && rows.Length < 64)
        {
            InsertionSort(rows);
            return;
        }

        runEnds.Add(rows.Length);
        if (scratch.Length < rows.Length) scratch = NewBuffer(rows.Length);
        var from = rows;
        var to = scratch.AsSpan(0, rows.Length);
        var inRows = true;
        while (runEnds.Count > 1)
        {
            var (kept, start) = (0, 0);
            for (var i = 0; i < runEnds.Count; i += 2)
            {
                var middle = runEnds[i];
                var end = i + 1 < runEnds.Count ? runEnds[i + 1] : middle;
                Merge(from, to, start, middle, end);
                runEnds[kept++] = end;
                start = end;
            }

            CollectionsMarshal.SetCount(runEnds, kept);
            var swapped = from;
            from = to;
            to = swapped;
            inRows = !inRows;
        }

        if (!inRows) from.CopyTo(rows);
    }

    private static void Merge(Span<LogEntry> from, Span<LogEntry> to, int start, int middle, int end)
    {
        var (left, right) = (start, middle);
        for (var at = start; at < end; at++)
        {
            to[at] = right >= end || (left < middle && from[left].Order <= from[right].Order) ? from[left++] : from[right++];
        }
    }

    private static void InsertionSort(Span<LogEntry> rows)
    {
        for (var i = 1; i < rows.Length; i++)
        {
            var row = rows[i];
            var order = row.Order;
            var at = i;
            for (; at > 0 && rows[at - 1].Order > order; at--) rows[at] = rows[at - 1];
            rows[at] = row;
        }
    }
}
