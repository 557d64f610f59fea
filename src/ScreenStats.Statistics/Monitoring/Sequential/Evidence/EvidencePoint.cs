namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>The evidence against a lot after a look.</summary>
/// <param name="Look">The look, as the events name it.</param>
/// <param name="Events">Events so far that could have fallen on the lot or elsewhere.</param>
/// <param name="OnLot">Those of them that fell on the lot.</param>
/// <param name="Expected">How many were expected to: the sum of their null probabilities.</param>
/// <param name="LogEvidence">The natural logarithm of the evidence; 0 before the first event.</param>
/// <param name="LogMaximum">The natural logarithm of the largest evidence of this look and those before, at least 0.</param>
public readonly record struct EvidencePoint(long Look, long Events, long OnLot, double Expected, double LogEvidence, double LogMaximum)
{
    /// <summary>The evidence; the largest number there is where it would be larger still.</summary>
    public double Evidence => Math.Min(double.MaxValue, Math.Exp(LogEvidence));

    /// <summary>The p-value that is valid at whatever look one stops: 1 over the largest evidence so far, at most 1.</summary>
    public double PValue => Math.Exp(-LogMaximum);
}
