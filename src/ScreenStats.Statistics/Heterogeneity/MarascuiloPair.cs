namespace ScreenStats.Statistics.Heterogeneity;

/// <summary>One of all pairs of groups, with limits that hold for all pairs at once.</summary>
/// <param name="First">The place of the first group in the list, from 0.</param>
/// <param name="Second">The place of the second group.</param>
/// <param name="Difference">Rate of the first minus rate of the second.</param>
/// <param name="CriticalRange">The distance from 0 beyond which the pair differs.</param>
/// <param name="Interval">The difference less and plus the critical range, clipped to [-1, 1].</param>
/// <param name="Differs">Whether the difference lies beyond the critical range.</param>
public sealed record MarascuiloPair(int First, int Second, double Difference, double CriticalRange, Interval Interval, bool Differs);
