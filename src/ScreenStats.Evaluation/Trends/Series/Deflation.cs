using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Trends.Series;

/// <summary>By what counts are divided before anything is fitted to them over time, because the trials of one week come in clusters.</summary>
/// <param name="Factor">At least 1.</param>
/// <param name="From">Which clusters it is from.</param>
/// <remarks>
/// The design effect of the whole span would hold the trend itself: weeks of a wave differ from others. So it is taken within weeks, twice: of people
/// within site-weeks, the same people being tested again, and of sites within weeks, beyond what each site has all the time (the rate of the week times the
/// ratio of the site). The larger one counts. What is left from week to week is for the errors of the fits.
/// </remarks>
internal sealed record Deflation(double Factor, string From)
{
    private const int FewestDegrees = 10;

    public static Deflation None { get; } = new(1, "none");

    public static Deflation Of(SeriesBasis basis, Tally tally, DataEnd end)
    {
        var (persons, sites) = (Persons(basis.Measure, tally, end), Sites(basis.Cube, basis.Measure, end));
        return Math.Max(persons, sites) <= 1 ? None : persons >= sites ? new Deflation(persons, "persons") : new Deflation(sites, "sites");
    }

    /// <summary>Squared deviations of people from the rate of their site-week, over what they would be if all runs were independent.</summary>
    private static double Persons(TrendMeasure measure, Tally tally, DataEnd end)
    {
        var counted = measure switch
        {
            TrendMeasure.Positivity => PersonMeasure.Positivity,
            TrendMeasure.InvalidRuns => PersonMeasure.InvalidRuns,
            _ => PersonMeasure.PredictiveValue,
        };
        double seen = 0, expected = 0;
        foreach (var cell in tally.Cells.Persons)
        {
            if (cell.Scope != PersonScope.SiteWeek || cell.Measure != counted || cell.Persons < 2 || cell.Events == 0 || cell.Events == cell.Trials) continue;
            if (cell.PeriodStart is { } monday && !end.CoversWeek(monday)) continue;
            var rate = (double)cell.Events / cell.Trials;
            seen += (cell.EventsSquared - (2 * rate * cell.TrialsTimesEvents) + (rate * rate * cell.TrialsSquared)) * cell.Persons / (cell.Persons - 1);
            // Two people of one trial each scatter around their own mean by twice rate (1 - rate) of two: trials, like people, are one fewer than counted.
            expected += rate * (1 - rate) * cell.Trials * cell.Trials / (cell.Trials - 1);
        }

        return expected > 0 ? seen / expected : 1;
    }

    /// <summary>Squared deviations of site-weeks from the week's rate times the site's ratio, over what they would be by chance.</summary>
    private static double Sites(TrendCube cube, TrendMeasure measure, DataEnd end)
    {
        var (trials, events) = (new double[cube.Weeks], new double[cube.Weeks]);
        foreach (var (week, counts) in cube.Sites.Values.SelectMany(weeks => weeks))
        {
            trials[week] += counts.Trials(measure);
            events[week] += counts.Events(measure);
        }

        // A week that is not over is fitted nowhere.
        for (var week = 0; week < trials.Length; week++)
        {
            if (!end.CoversWeek(cube.FirstMonday.AddDays(7 * week))) trials[week] = events[week] = 0;
        }

        double seen = 0, expected = 0;
        int cells = 0, sites = 0;
        var used = new bool[trials.Length];
        foreach (var weeks in cube.Sites.Values)
        {
            double own = 0, usual = 0;
            foreach (var (week, counts) in weeks)
            {
                if (trials[week] == 0) continue;
                own += counts.Events(measure);
                usual += counts.Trials(measure) * events[week] / trials[week];
            }

            if (own == 0 || usual == 0) continue;
            sites++;
            foreach (var (week, counts) in weeks)
            {
                double of = counts.Trials(measure);
                if (of == 0 || events[week] == 0) continue;
                var mean = Math.Min(of, of * events[week] / trials[week] * own / usual);
                used[week] = true;
                cells++;
                var off = counts.Events(measure) - mean;
                seen += off * off;
                expected += mean * (1 - (mean / of));
            }
        }

        var degrees = cells - sites - used.Count(week => week) + 1;
        return sites > 1 && degrees >= FewestDegrees && expected > 0 ? seen / expected * cells / degrees : 1;
    }
}
