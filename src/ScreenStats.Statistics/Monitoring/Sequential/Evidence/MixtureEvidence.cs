using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Sequential.Evidence;

/// <summary>The running products of one lot, one for each multiple of the odds, and the logarithm of their average.</summary>
internal sealed class MixtureEvidence
{
    private readonly double[] multiples = [2, 4, 8, 16, 32, 64];
    private readonly double[] logMultiples;
    private readonly double[] logs;

    public MixtureEvidence()
    {
        logMultiples = Array.ConvertAll(multiples, Math.Log);
        logs = new double[multiples.Length];
    }

    /// <summary>
    /// With q = θp / (1 - p + θp): q / p is θ / (1 + (θ - 1) p) and (1 - q) / (1 - p) is 1 / (1 + (θ - 1) p), so both have the
    /// same denominator and no logarithm of a difference is taken.
    /// </summary>
    public void Add(double probability, bool onLot)
    {
        for (var i = 0; i < logs.Length; i++)
            logs[i] += (onLot ? logMultiples[i] : 0) - Precise.LogOnePlus((multiples[i] - 1) * probability);
    }

    public double LogAverage
    {
        get
        {
            var highest = logs.Max();
            double sum = 0;
            foreach (var log in logs) sum += Math.Exp(log - highest);
            return highest + Math.Log(sum / logs.Length);
        }
    }
}
