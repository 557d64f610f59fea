using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Sketches;
using ScreenStats.Evaluation.Trends;

namespace ScreenStats.Evaluation.Tests.Trends;

/// <summary>Programs of many weeks whose counts are as their rates say, without chance.</summary>
internal static class TrendSketch
{
    public static readonly DayOfWeek[] Workdays = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];

    public static DateOnly Monday(int week) => ProgramSketch.FirstDay.AddDays(7 * week);

    /// <summary>Adds weeks of a site: so many tests on each workday, and so many positives a week, spread over its days.</summary>
    public static ProgramSketch Weeks(
        this ProgramSketch sketch, int weeks, Func<int, int> positives, int tests = 100, string site = "North", string lot = "A1", int first = 0, FollowUp followUp = FollowUp.Unverified, int days = 5)
    {
        for (var week = first; week < first + weeks; week++)
        {
            for (var day = 0; day < days; day++)
            {
                var some = (positives(week) + days - 1 - day) / days;
                sketch.Runs(Outcome.Positive, some, followUp, site, lot, (7 * week) + day).Runs(Outcome.Negative, tests - some, site: site, lot: lot, day: (7 * week) + day);
            }
        }

        return sketch;
    }

    public static TrendFindings Trends(this ProgramSketch sketch, ProgramSettings? settings = null) => Evaluator.Evaluate(sketch.Tally(), settings ?? new ProgramSettings()).Trends;

    public static string Text(this TrendFindings findings) => string.Join(' ', findings.Sentences.Select(sentence => sentence.Text));
}
