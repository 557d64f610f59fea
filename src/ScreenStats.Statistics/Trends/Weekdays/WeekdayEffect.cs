namespace ScreenStats.Statistics.Trends.Weekdays;

/// <summary>One day of the week, all weeks together, and how its odds compare with the mean of the days.</summary>
/// <param name="Weekday">The day.</param>
/// <param name="Events">Its events in all weeks.</param>
/// <param name="Trials">Its trials in all weeks.</param>
/// <param name="Ratio">Its odds within a week over the geometric mean of the odds of the days that have a ratio; undefined with the reason.</param>
/// <param name="StandardError">The standard error of the ratio's logarithm; null without a ratio.</param>
public sealed record WeekdayEffect(DayOfWeek Weekday, double Events, double Trials, Estimate Ratio, double? StandardError);
