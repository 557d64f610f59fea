using ScreenStats.Evaluation.Trends.Series;

namespace ScreenStats.Evaluation.Trends.Weekdays;

/// <summary>The days of the week of a series, within weeks.</summary>
internal static class WeekdayFits
{
    private static readonly DayOfWeek[] Days =
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday, DayOfWeek.Saturday, DayOfWeek.Sunday];

    public static IEnumerable<WeekdayRow> Of(SeriesBasis basis, Deflation deflation, double confidence)
    {
        var sums = new TrendCounts[7];
        for (var day = basis.Cube.First; day <= basis.Cube.Last; day = day.AddDays(1)) sums[(int)day.DayOfWeek].Add(basis.Cube[day]);
        foreach (var day in Days)
        {
            var counts = sums[(int)day];
            if (counts.Trials(basis.Measure) == 0) continue;
            yield return new WeekdayRow
            {
                Key = $"{basis.Key}|{day}",
                Measure = basis.Measure,
                Basis = basis.Basis,
                Weekday = day.ToString(),
                Share = SeriesRows.Share(counts.Events(basis.Measure), counts.Trials(basis.Measure), deflation, confidence),
                OddsRatio = null,
                RatioLower = null,
                RatioUpper = null,
                OddsRatioUndefined = "not fitted",
                PValue = null,
                PValueUndefined = "not fitted",
                Leads = basis.Leads,
            };
        }
    }
}
