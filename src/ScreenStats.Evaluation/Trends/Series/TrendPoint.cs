namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>One point of a series.</summary>
/// <param name="Start">First day.</param>
/// <param name="End">Last day.</param>
/// <param name="Complete">Whether the stretch is over and, for predictive value, its follow-up is.</param>
/// <param name="Trials">Trials.</param>
/// <param name="Events">Events.</param>
/// <param name="Pending">Positive runs that still wait for a result.</param>
internal readonly record struct TrendPoint(DateOnly Start, DateOnly End, bool Complete, long Trials, long Events, long Pending)
{
    /// <summary>The middle of the stretch, in weeks since a day.</summary>
    public double WeeksSince(DateOnly origin) => (((Start.DayNumber + End.DayNumber) / 2.0) - origin.DayNumber) / 7;
}
