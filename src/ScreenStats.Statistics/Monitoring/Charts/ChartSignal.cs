using ScreenStats.Statistics.Monitoring.Runs;

namespace ScreenStats.Statistics.Monitoring.Charts;

/// <summary>A rule that fired at a point of a chart.</summary>
/// <param name="Index">The point's position in the input, from 0.</param>
/// <param name="Rule">The rule.</param>
/// <param name="Side">The side of the centre the point lies on.</param>
public readonly record struct ChartSignal(int Index, RunRule Rule, ChartSide Side);
