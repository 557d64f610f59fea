namespace ScreenStats.Statistics.Cadence.Courses;

/// <summary>One point of the course of an infection: what holds at an age of it.</summary>
public readonly record struct CourseDay
{
    /// <summary>Makes a point.</summary>
    /// <param name="ageDays">Days since infection, 0 to <see cref="InfectionCourse.LongestDays"/>.</param>
    /// <param name="detection">The chance that a screen taken then is positive, in [0, 1].</param>
    /// <param name="infectiousness">How much the person passes on then, in any unit, 0 to 1e15.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public CourseDay(double ageDays, double detection, double infectiousness)
    {
        if (!(ageDays is >= 0 and <= InfectionCourse.LongestDays))
            throw new ArgumentOutOfRangeException(nameof(ageDays), ageDays, "The age of an infection must be days from 0 to 3,660.");
        Guard.Probability(detection);
        Guard.Amount(infectiousness);
        AgeDays = ageDays;
        Detection = detection;
        Infectiousness = infectiousness;
    }

    /// <summary>Days since infection.</summary>
    public double AgeDays { get; }

    /// <summary>The chance that a screen taken then is positive.</summary>
    public double Detection { get; }

    /// <summary>How much the person passes on then, in any unit.</summary>
    public double Infectiousness { get; }
}
