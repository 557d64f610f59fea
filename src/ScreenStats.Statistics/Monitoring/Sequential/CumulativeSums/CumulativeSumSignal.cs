namespace ScreenStats.Statistics.Monitoring.Sequential.CumulativeSums;

/// <summary>A signal: the first of the observations, one after another, at which the statistic signals.</summary>
/// <param name="Index">The observation at which it began, from 0.</param>
/// <param name="RisingSince">The observation with which the rise began: the first one after the statistic was last at 0 or below, from 0.</param>
/// <param name="Statistic">The statistic at <paramref name="Index"/>.</param>
public sealed record CumulativeSumSignal(int Index, int RisingSince, double Statistic)
{
    /// <summary>Observations from the beginning of the rise to the signal, both included.</summary>
    public int Length => Index - RisingSince + 1;
}
