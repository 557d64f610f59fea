namespace ScreenStats.Counting.Programs.Cadence;

/// <summary>One line of a course by day.</summary>
/// <param name="AgeDays">Days since infection, from 0 to 3660; not before the line above. A day on two lines is a jump.</param>
/// <param name="Detection">The chance that one screen is positive, in [0, 1].</param>
/// <param name="Infectiousness">How infectious the person is, 0 or more, in any unit; only its shape counts.</param>
public sealed record StatedCourseDay(double AgeDays, double Detection, double Infectiousness);
