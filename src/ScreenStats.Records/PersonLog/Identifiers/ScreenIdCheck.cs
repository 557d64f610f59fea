using System.Numerics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records.PersonLog.Identifiers;

/// <summary>
/// Rows that share a screen_id with an earlier row: duplicates where they mean the same, else conflicts. Equal hashes nominate, the
/// file decides.
/// </summary>
internal static class ScreenIdCheck
{
    // The bits of a range then take 8 MiB a thread, and more only beyond sixteen ranges: every range is one more pass over all prints.
    private const int PrintsOfRange = 1 << 22;
    private const int MostRangeBits = 4;

    /// <summary>The rows to take out. The logs are empty then.</summary>
    /// <param name="logs">The identifiers of each thread.</param>
    /// <param name="written">What was written away of them, which is everything; null: nothing.</param>
    /// <param name="source">The export.</param>
    /// <param name="threads">Number of threads.</param>
    /// <param name="cancelled">Stops between two ranges.</param>
    public static List<RemovedRow> Find(
        IReadOnlyList<ScreenIdLog> logs, IReadOnlyList<PartitionSpill<ulong>>? written, IRowSource source, int threads, CancellationToken cancelled)
    {
        var groups = new List<uint[]>();
        void Take(RepeatedPrints worker) => groups.AddRange(worker.Groups);
        if (written is not null)
        {
            Workers.Run(threads, 1 << (ScreenIdLog.PrintBits - 32), () => new RepeatedPrints(), (worker, partition) => worker.Find(written, partition), Take, cancelled);
        }
        else if (logs.Any(log => log.Any))
        {
            foreach (var log in logs) log.EndRun();
            var total = (ulong)logs.Sum(log => (long)log.Count);
            var ranges = Math.Max((total + PrintsOfRange - 1) / PrintsOfRange, (ulong)threads);
            var bits = Math.Min(BitOperations.Log2(BitOperations.RoundUpToPowerOf2(ranges)), MostRangeBits);
            Workers.Run(threads, 1 << bits, () => new RepeatedPrints(), (worker, range) => worker.Find(logs, bits, range), Take, cancelled);
        }

        foreach (var log in logs) log.Dispose();
        if (written is not null)
        {
            foreach (var log in written) log.Dispose();
        }

        groups.Sort(static (a, b) => a[0].CompareTo(b[0]));
        var removed = new List<RemovedRow>();
        var firsts = new List<uint>();
        foreach (var group in groups)
        {
            firsts.Clear();
            foreach (var record in group)
            {
                if (Removed(firsts, record, source) is { } row) removed.Add(row);
                else firsts.Add(record);
            }
        }

        return removed;
    }

    // Nearly always all rows of a group have one identifier; two that share their print only are told apart here.
    private static RemovedRow? Removed(List<uint> firsts, uint record, IRowSource source)
    {
        foreach (var first in firsts)
        {
            if (source.MeanTheSame(first, record)) return new(ExportKind.Screening, record, CountingDiagnostics.Duplicate, first);
            if (source.HaveOneScreenId(first, record)) return new(ExportKind.Screening, record, CountingDiagnostics.ConflictingScreenId, first);
        }

        return null;
    }
}
