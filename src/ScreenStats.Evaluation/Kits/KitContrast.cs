using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.Kits;

/// <summary>Two devices compared by one measure.</summary>
/// <param name="Key">Names of both and the measure joined by vertical bars.</param>
/// <param name="First">The device that stands first in the program file.</param>
/// <param name="Second">The other.</param>
/// <param name="Measure">Which trials and events.</param>
/// <param name="FirstShare">The first device's proportion.</param>
/// <param name="SecondShare">The second device's proportion.</param>
/// <param name="Crude">The plain difference, wherever and whenever the devices were used.</param>
/// <param name="Within">The difference within site-weeks that used both.</param>
/// <param name="CrudeWithoutFlaggedLots">The plain difference without the runs of flagged lots; null where no lot of either is flagged.</param>
/// <param name="WithinWithoutFlaggedLots">The difference within site-weeks without them; null likewise.</param>
public sealed record KitContrast(
    string Key, string First, string Second, PersonMeasure Measure, ProportionFinding FirstShare, ProportionFinding SecondShare,
    DifferenceFinding Crude, DifferenceFinding Within, DifferenceFinding? CrudeWithoutFlaggedLots, DifferenceFinding? WithinWithoutFlaggedLots);
