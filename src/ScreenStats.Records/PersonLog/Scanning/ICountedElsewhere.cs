using ScreenStats.Records.PersonLog.Sums;

namespace ScreenStats.Records.PersonLog.Scanning;

/// <summary>
/// People whose runs are mostly counted elsewhere: the log holds only those rows of theirs that linkage, repeats and retests look at,
/// whole days of them, and what is summed over all runs of a person is added afterwards.
/// </summary>
internal interface ICountedElsewhere
{
    /// <summary>Begins, once the rows of the log are known.</summary>
    /// <param name="sampling">How negative runs were drawn for audit; null without audits.</param>
    void Begin(AuditSampling? sampling);

    /// <summary>People of whom there are rows, though the log may hold none of them.</summary>
    IEnumerable<ulong> Known { get; }

    /// <summary>True where the log holds every row of the person. From several threads.</summary>
    bool IsWhole(ulong person);

    /// <summary>All negative runs of a person of the log who is not whole, by sampling stratum (0 for none). From several threads.</summary>
    IReadOnlyList<(int Stratum, int Negatives)> Negatives(ulong person);

    /// <summary>Adds what was summed elsewhere, once all people of the log were looked at.</summary>
    void AddTo(PartitionScan scan);
}
