namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>Selects lots by their evidence and holds the expected share of false findings.</summary>
public static class EvidenceDiscovery
{
    /// <summary>The procedure of Benjamini and Hochberg for evidence instead of p-values.</summary>
    /// <param name="logEvidence">The natural logarithm of each lot's evidence, finite.</param>
    /// <param name="falseDiscoveryRate">The largest expected share of false findings, in (0, 1).</param>
    /// <returns>The lots selected and the smallest rate at which each would be.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A logarithm that is not finite, or a rate outside (0, 1).</exception>
    /// <remarks>
    /// Of K lots the k with the largest evidence are selected, k being the largest number for which the k-th largest evidence is at least K / (k
    /// rate). It holds whatever the dependence between the lots, which matters here: an event on one lot speaks for all others of its stratum.
    /// The evidence must be that of one moment (<see cref="EvidencePath.LogEvidence"/>), however that moment was chosen; the largest so far is
    /// no evidence in this sense. Source: Wang R, Ramdas A, J R Stat Soc B 2022;84:822-852.
    /// </remarks>
    public static EvidenceSelection BenjaminiHochberg(IReadOnlyList<double> logEvidence, double falseDiscoveryRate)
    {
        ArgumentNullException.ThrowIfNull(logEvidence);
        if (!(falseDiscoveryRate > 0 && falseDiscoveryRate < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(falseDiscoveryRate), falseDiscoveryRate, "The share of false findings lies strictly between 0 and 1, for instance 0.05.");
        }

        foreach (var log in logEvidence) Guard.Finite(log, nameof(logEvidence));
        var order = Enumerable.Range(0, logEvidence.Count).OrderByDescending(i => logEvidence[i]).ToArray();
        var adjusted = new double[order.Length];
        var selected = new bool[order.Length];
        var lowest = 0.0;
        var logRate = Math.Log(falseDiscoveryRate);
        var any = false;
        for (var rank = order.Length; rank >= 1; rank--)
        {
            var lot = order[rank - 1];
            var log = Math.Log(order.Length) - Math.Log(rank) - logEvidence[lot];
            lowest = Math.Min(lowest, log);
            adjusted[lot] = Math.Exp(lowest);
            any |= log <= logRate;
            selected[lot] = any;
        }

        return new EvidenceSelection(falseDiscoveryRate, selected, adjusted);
    }
}
