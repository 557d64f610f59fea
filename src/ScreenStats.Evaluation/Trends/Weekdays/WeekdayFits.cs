using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Trends.Series;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Trends;
using ScreenStats.Statistics.Trends.Weekdays;

namespace ScreenStats.Evaluation.Trends.Weekdays;

/// <summary>The days of the week of a series, within the weeks of each site: a site that is tested on Mondays makes no Monday pattern.</summary>
internal static class WeekdayFits
{
    private static readonly DayOfWeek[] Days =
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday, DayOfWeek.Saturday, DayOfWeek.Sunday];

    public static IEnumerable<WeekdayRow> Of(SeriesBasis basis, Tally tally, Deflation deflation, double confidence)
    {
        var sums = new TrendCounts[7];
        foreach (var day in basis.Cube.Days) sums[(int)day.DayOfWeek].Add(basis.Cube[day]);
        var (counts, held) = Counts(basis, tally);
        var pattern = WeekdayComparison.Compare(counts, new WeekdayOptions { Scale = DispersionScale.PearsonAtLeastOne, DesignEffect = deflation.Factor, Confidence = confidence });
        foreach (var day in Days)
        {
            var own = sums[(int)day];
            if (own.Trials(basis.Measure) == 0) continue;
            var effect = pattern.Weekdays.FirstOrDefault(one => one.Weekday == day)?.Ratio;
            yield return new WeekdayRow
            {
                Key = $"{basis.Key}|{day}",
                Measure = basis.Measure,
                Basis = basis.Basis,
                Weekday = day.ToString(),
                Share = SeriesRows.Share(own.Events(basis.Measure), own.Trials(basis.Measure), deflation, confidence),
                OddsRatio = effect?.Value,
                RatioLower = effect?.Lower,
                RatioUpper = effect?.Upper,
                OddsRatioUndefined = effect?.Value is not null ? null : (effect?.Reason ?? pattern.Reason)?.Describe() ?? "no week compares this day with another",
                PValue = pattern.PValue,
                PValueUndefined = pattern.PValue is not null ? null : pattern.Reason?.Describe() ?? "no week compares two days",
                Within = held,
                Leads = basis.Leads,
            };
        }
    }

    /// <summary>Counts by day within site-weeks that have events; within weeks of the whole where there are very many.</summary>
    private static (List<WeekdayCount> Counts, string Within) Counts(SeriesBasis basis, Tally tally)
    {
        var strata = new Dictionary<(string Site, int Week), TrendCounts[]>();
        foreach (var (site, weeks) in basis.Cube.Sites)
        {
            foreach (var (week, of) in weeks)
            {
                var events = of.Events(basis.Measure);
                if (events > 0 && events < of.Trials(basis.Measure)) strata.Add((site, week), new TrendCounts[7]);
            }

            if (strata.Count > TrendRules.MostSiteWeeks) break;
        }

        var counts = new List<WeekdayCount>();
        if (strata.Count > TrendRules.MostSiteWeeks)
        {
            foreach (var day in basis.Cube.Days) counts.Add(Count(basis.Cube.Week(day), day.DayOfWeek, basis.Cube[day]));
            return (counts, "weeks");
        }

        foreach (var cell in tally.Cells.Screens)
        {
            if (basis.Cube.Kept(cell) && strata.TryGetValue((cell.Site, basis.Cube.Week(cell.Day)), out var days))
                days[(int)cell.Day.DayOfWeek].Add(cell.Outcome, cell.FollowUp, cell.Runs);
        }

        var number = 0;
        foreach (var (_, days) in strata)
        {
            foreach (var day in Days) counts.Add(Count(number, day, days[(int)day]));
            number++;
        }

        return (counts, "site-weeks");

        WeekdayCount Count(int stratum, DayOfWeek day, TrendCounts of) => new(stratum, day, of.Events(basis.Measure), of.Trials(basis.Measure));
    }
}
