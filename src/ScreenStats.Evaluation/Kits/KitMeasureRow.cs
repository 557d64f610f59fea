using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Kits;

/// <summary>One measure of one device.</summary>
/// <param name="Device">The device.</param>
/// <param name="Measure">Which trials and events.</param>
/// <param name="Share">The proportion.</param>
public sealed record KitMeasureRow(string Device, PersonMeasure Measure, ProportionFinding Share);
