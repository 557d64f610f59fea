using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>Two windows, the same for everybody, with one sensitivity.</summary>
public sealed record WindowModel : CourseModel
{
    /// <summary>Makes a model.</summary>
    /// <param name="detectable">Days since infection between which a screen can be positive, from 0 to <see cref="InfectionCourse.LongestDays"/>.</param>
    /// <param name="infectious">Days since infection between which it is passed on; null where that is not known.</param>
    /// <param name="symptoms">Symptoms and what people do at their onset; null where nobody isolates of their own accord.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain, or an end before its beginning.</exception>
    public WindowModel(Interval detectable, Interval? infectious, SymptomOnset? symptoms = null)
    {
        Detectable = detectable;
        Infectious = infectious;
        Symptoms = symptoms;
        Course(0);
    }

    /// <summary>Days since infection between which a screen can be positive.</summary>
    public Interval Detectable { get; }

    /// <summary>Days since infection between which it is passed on; null where that is not known.</summary>
    public Interval? Infectious { get; }

    /// <summary>Symptoms; null where nobody isolates of their own accord.</summary>
    public SymptomOnset? Symptoms { get; }

    /// <inheritdoc/>
    public override bool HoldsDetection => false;

    /// <inheritdoc/>
    public override bool KnowsInfectiousness => Infectious is not null;

    /// <inheritdoc/>
    public override CourseOutcome? Outcome(ScreeningSchedule schedule, ScreeningRules rules, double? sensitivity) =>
        sensitivity is { } known ? CourseYield.Of(Course(known), schedule, rules) : null;

    /// <inheritdoc/>
    public override ImmutableArray<double> InfectiousnessByDay() => ByDay(Course(0));

    private InfectionCourse Course(double sensitivity) => InfectionCourse.Windows(
        new InfectionWindows(Detectable.Lower, Detectable.Upper, Infectious?.Lower ?? 0, Infectious?.Upper ?? 0), sensitivity) with { Symptoms = Symptoms };
}
