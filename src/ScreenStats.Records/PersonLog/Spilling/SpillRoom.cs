using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Spilling;

/// <summary>The bounded memory of a reading: what each thread's rows may take, and the folder for what is beyond it.</summary>
/// <param name="budget">The bound.</param>
/// <param name="folder">Where rows go.</param>
/// <param name="threads">Threads that read.</param>
internal sealed class SpillRoom(MemoryBudget budget, SpillFolder folder, int threads) : IDisposable
{
    /// <summary>Bytes that the log of one thread may take.</summary>
    public long Log { get; } = budget.Log / threads;

    /// <summary>Bytes that the identifiers of one thread may take.</summary>
    public long Identifiers { get; } = budget.Identifiers / threads;

    /// <summary>Bytes that the kits of one thread may take.</summary>
    public long Kits { get; } = budget.Kits / threads;

    /// <summary>Bytes of the partitions that are looked at together.</summary>
    public long Scan { get; } = budget.Scan;

    public PartitionSpill<T> Create<T>() where T : unmanaged => new(folder.Create());

    public void Dispose() => folder.Dispose();
}
