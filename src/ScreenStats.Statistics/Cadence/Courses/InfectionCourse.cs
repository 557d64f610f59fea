using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses.Quadrature;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>The course of an infection: by days since infection, the chance that a screen is positive and how much is passed on.</summary>
/// <remarks>
/// Both are linear between the days given, 0 before the first and after the last; two entries of one day make a jump. The unit of the
/// infectiousness drops out: an infectious day is a day at its highest value, so that days are its sum over that value.
/// </remarks>
public sealed record InfectionCourse
{
    /// <summary>The greatest age of an infection that a course may hold, in days: about ten years.</summary>
    public const double LongestDays = 3660;

    private InfectionCourse(AgeCurve detection, AgeCurve spread)
    {
        Detection = detection;
        Spread = spread;
    }

    /// <summary>Symptoms and what people do at their onset; null where nobody isolates of their own accord.</summary>
    public SymptomOnset? Symptoms { get; init; }

    /// <summary>Days since infection from which a screen can be positive; 0 where it never can.</summary>
    public double DetectableFrom => Detection.First;

    /// <summary>Days since infection until which a screen can be positive; 0 where it never can.</summary>
    public double DetectableTo => Detection.Last;

    /// <summary>Days since infection from which the person passes it on; 0 where never.</summary>
    public double InfectiousFrom => Spread.First;

    /// <summary>Days since infection until which the person passes it on; 0 where never.</summary>
    public double InfectiousTo => Spread.Last;

    /// <summary>Infectious days of one infection with nothing done: the sum of the infectiousness over its highest value.</summary>
    public double InfectiousDays => Spread.Total;

    internal AgeCurve Detection { get; }

    internal AgeCurve Spread { get; }

    /// <summary>Windows, the same for everybody, with one sensitivity.</summary>
    /// <param name="windows">When an infection can be detected and when it is passed on; both end by <see cref="LongestDays"/>.</param>
    /// <param name="sensitivity">The chance that a screen within the detectable window is positive, in [0, 1].</param>
    /// <returns>The course.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A window that ends later, or a sensitivity outside [0, 1].</exception>
    public static InfectionCourse Windows(InfectionWindows windows, double sensitivity)
    {
        Guard.Probability(sensitivity);
        if (windows.DetectableTo > LongestDays || windows.InfectiousTo > LongestDays)
            throw new ArgumentOutOfRangeException(nameof(windows), windows, "The windows of a course must end within 3,660 days.");
        return new InfectionCourse(
            AgeCurve.Box(windows.DetectableFrom, windows.DetectableTo, sensitivity), AgeCurve.Box(windows.InfectiousFrom, windows.InfectiousTo, 1));
    }

    /// <summary>A course by day since infection.</summary>
    /// <param name="days">The points, by age; at most two of one age, the value before a jump first. None: never detected, nothing passed on.</param>
    /// <returns>The course.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Ages that fall, or three points of one age.</exception>
    public static InfectionCourse ByDay(ImmutableArray<CourseDay> days)
    {
        if (days.IsDefault) throw new ArgumentNullException(nameof(days));
        for (var i = 1; i < days.Length; i++)
        {
            if (days[i].AgeDays < days[i - 1].AgeDays || (i > 1 && days[i].AgeDays == days[i - 2].AgeDays))
                throw new ArgumentOutOfRangeException(nameof(days), days[i].AgeDays, "The days of a course must rise, with at most two entries of one day.");
        }

        double[] ages = [.. days.Select(day => day.AgeDays)];
        return new InfectionCourse(
            AgeCurve.Linear(ages, [.. days.Select(day => day.Detection)], keepAllZero: true, scale: false),
            AgeCurve.Linear(ages, [.. days.Select(day => day.Infectiousness)], keepAllZero: false, scale: true));
    }

    /// <summary>The chance that a screen at an age of the infection is positive.</summary>
    /// <param name="ageDays">Days since infection, 0 or more.</param>
    /// <returns>The chance, in [0, 1]; at a jump the value after it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not from 0 to a billion days.</exception>
    public double DetectionChance(double ageDays)
    {
        Guard.Days(ageDays);
        return Detection.Value(ageDays);
    }

    /// <summary>How much a person passes on at an age of the infection, against the highest value.</summary>
    /// <param name="ageDays">Days since infection, 0 or more.</param>
    /// <returns>From 0 to 1; at a jump the value after it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not from 0 to a billion days.</exception>
    public double Infectiousness(double ageDays)
    {
        Guard.Days(ageDays);
        return Spread.Value(ageDays);
    }

    /// <summary>The chance that a person is not yet isolated because of symptoms at an age of the infection.</summary>
    /// <param name="ageDays">Days since infection, 0 or more.</param>
    /// <returns>The chance, in [0, 1]; 1 where nobody isolates of their own accord.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not from 0 to a billion days.</exception>
    public double NotIsolatedBySymptoms(double ageDays)
    {
        Guard.Days(ageDays);
        return Symptoms is { } symptoms ? 1 - (symptoms.Share * symptoms.IsolationShare * new OnsetLaw(symptoms).Share(ageDays)) : 1;
    }

    /// <summary>The same course, infectious for a day from an age on.</summary>
    internal InfectionCourse InfectiousFromOnly(double ageDays) => new(Detection, AgeCurve.Box(ageDays, ageDays + 1, 1)) { Symptoms = Symptoms };
}
