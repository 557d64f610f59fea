using ScreenStats.Evaluation.Clusters;

namespace ScreenStats.Evaluation.IntervalCases;

/// <summary>Interval cases found so many days after a negative run.</summary>
/// <param name="DaysSinceRun">Whole calendar days from the person's latest negative run to the specimen.</param>
/// <param name="Specimens">Positive confirmatory specimens, taken for another reason than audit.</param>
/// <param name="Cumulative">Those of this many days or fewer.</param>
/// <param name="ProgramSensitivity">Cases found by screening, of these and the interval cases of this many days or fewer.</param>
public sealed record IntervalCaseFinding(int DaysSinceRun, long Specimens, long Cumulative, ProportionFinding ProgramSensitivity);
