using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Trends.MovingWindows;

/// <summary>The proportion of some periods in a row.</summary>
/// <param name="First">The place of the first period in the list given, counted from 0.</param>
/// <param name="Last">The place of the last period, counted from 0.</param>
/// <param name="Proportion">Events of trials of these periods together, with limits; undefined where they have no trials.</param>
public sealed record MovingWindow(int First, int Last, EffectiveProportionEstimate Proportion);
