using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Kits;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>Two ways of taking a specimen compared by one measure.</summary>
/// <param name="Key">Grouping, both levels and the measure joined by vertical bars.</param>
/// <param name="Grouping">Who collected, or where the swab was taken.</param>
/// <param name="First">The first.</param>
/// <param name="Second">The other.</param>
/// <param name="Measure">Which trials and events.</param>
/// <param name="Crude">The plain difference, wherever and whenever they were used.</param>
/// <param name="Within">The difference within site-weeks that used both.</param>
public sealed record ConductContrast(
    string Key, Grouping Grouping, string First, string Second, PersonMeasure Measure, DifferenceFinding Crude, DifferenceFinding Within);
