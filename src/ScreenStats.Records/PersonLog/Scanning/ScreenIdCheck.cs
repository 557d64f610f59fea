using ScreenStats.Counting.Ledger;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Rows;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>
/// Rows that share a screen_id with an earlier row: duplicates where they mean the same, else conflicts. Equal hashes nominate, the
/// file decides.
/// </summary>
internal static class ScreenIdCheck
{
    /// <summary>The rows to take out, by record.</summary>
    public static List<RemovedRow> Find(IReadOnlyList<RunSink> sinks, IRowSource source, int threads)
    {
        var removed = new List<RemovedRow>();
        if (!sinks.Any(sink => sink.AnyScreenId)) return removed;
        var groups = new List<uint[]>();
        Workers.Run(threads, PartitionedBuffer<ScreenIdEntry>.Partitions, () => new SameIds(sinks), (worker, partition) => worker.Find(partition),
            worker => groups.AddRange(worker.Groups));
        foreach (var sink in sinks) sink.ScreenIds.Dispose();
        groups.Sort(static (a, b) => a[0].CompareTo(b[0]));
        foreach (var group in groups)
        {
            foreach (var record in group.AsSpan(1))
            {
                var code = source.MeanTheSame(group[0], record) ? CountingDiagnostics.Duplicate : CountingDiagnostics.ConflictingScreenId;
                removed.Add(new(ExportKind.Screening, record, code, group[0]));
            }
        }

        return removed;
    }

    private sealed class SameIds(IReadOnlyList<RunSink> sinks)
    {
        private ulong[] seen = new ulong[1024];

        public List<uint[]> Groups { get; } = [];

        public void Find(int partition)
        {
            var total = sinks.Sum(sink => sink.ScreenIds.Count(partition));
            var size = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(1024, 2L * total));
            if (seen.Length < size) seen = new ulong[size];
            else Array.Clear(seen);
            HashSet<ulong>? again = null;
            var mask = seen.Length - 1;
            foreach (var sink in sinks)
            {
                foreach (var chunk in sink.ScreenIds.Chunks(partition))
                {
                    foreach (ref readonly var entry in chunk.AsSpan())
                    {
                        var slot = (int)((entry.Id * 0xC2B2AE3D27D4EB4Ful) >> 33) & mask;
                        while (seen[slot] != 0 && seen[slot] != entry.Id) slot = (slot + 1) & mask;
                        if (seen[slot] == entry.Id) (again ??= []).Add(entry.Id);
                        else seen[slot] = entry.Id;
                    }
                }
            }

            if (again is not null) Collect(partition, again);
        }

        private void Collect(int partition, HashSet<ulong> again)
        {
            var found = new List<(ulong Id, uint Record)>();
            foreach (var sink in sinks)
            {
                foreach (var chunk in sink.ScreenIds.Chunks(partition))
                {
                    foreach (ref readonly var entry in chunk.AsSpan())
                    {
                        if (again.Contains(entry.Id)) found.Add((entry.Id, entry.Record));
                    }
                }
            }

            found.Sort();
            for (var i = 0; i < found.Count;)
            {
                var start = i;
                while (i < found.Count && found[i].Id == found[start].Id) i++;
                Groups.Add([.. found[start..i].Select(row => row.Record)]);
            }
        }
    }
}
