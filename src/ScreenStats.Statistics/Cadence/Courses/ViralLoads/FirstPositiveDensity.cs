using ScreenStats.Statistics.Cadence.Courses.Quadrature;

namespace ScreenStats.Statistics.Cadence.Courses.ViralLoads;

/// <summary>
/// Screens of a window with one sensitivity, by days since its beginning: the density of the first that finds the infection, and of all taken up to
/// then, over all places of the infection within the schedule. Both are constant between <see cref="Days"/>, whatever the schedule.
/// </summary>
internal sealed class FirstPositiveDensity
{
    private const double Nobody = 1e-15;

    private FirstPositiveDensity(double[] days, double[] found, double[] taken)
    {
        (Days, Found, Taken) = (days, found, taken);
        (FoundBy, TakenBy) = (Sum(days, found), Sum(days, taken));
    }

    /// <summary>Ends of the stretches, from 0 on, rising.</summary>
    public double[] Days { get; }

    /// <summary>The density of the screen that finds the infection, in each stretch.</summary>
    public double[] Found { get; }

    /// <summary>The density of all screens taken up to it.</summary>
    public double[] Taken { get; }

    /// <summary>The chance to be found by the beginning of each stretch.</summary>
    public double[] FoundBy { get; }

    /// <summary>Screens taken by the beginning of each stretch.</summary>
    public double[] TakenBy { get; }

    public static FirstPositiveDensity Of(ScreeningSchedule schedule, ScreeningRules rules, double sensitivity, double longest)
    {
        var chain = MissChain.Of(schedule, rules, sensitivity);
        if (longest <= 0 || schedule.DuePerDay <= 0) return new FirstPositiveDensity([0], [], []);
        return schedule.Gaps.IsEmpty ? Repeating(schedule, chain, longest) : Renewal(schedule, rules, sensitivity, longest);
    }

    /// <summary>A figure accumulated to an age of the window that lies in a stretch or after all of them.</summary>
    public double By(double[] sums, double[] densities, double days)
    {
        if (days <= 0 || densities.Length == 0) return 0;
        var at = Array.BinarySearch(Days, days);
        at = at < 0 ? ~at - 1 : at;
        return at >= densities.Length ? sums[^1] : sums[at] + (densities[at] * (days - Days[at]));
    }

    /// <summary>The integral of the chance to be found by a day of the window, from its beginning to a day within or after it; after its end nobody else is found.</summary>
    public double FoundSum(double days, double window)
    {
        var (sum, to) = (0.0, Math.Min(days, window));
        for (var k = 0; k < Found.Length && Days[k] < to; k++)
        {
            var width = Math.Min(Days[k + 1], to) - Days[k];
            sum += width * (FoundBy[k] + (Found[k] * width / 2));
        }

        return days > window ? sum + ((days - window) * By(FoundBy, Found, window)) : sum;
    }

    private static FirstPositiveDensity Repeating(ScreeningSchedule schedule, MissChain chain, double longest)
    {
        var (at, period) = (schedule.At, schedule.PeriodDays);
        var steps = new SortedDictionary<double, (double Found, double Taken)> { [0] = default };
        for (var screen = 0; screen < at.Length; screen++)
        {
            var (found, taken) = (0.0, 0.0);
            for (var k = 0; ; k++)
            {
                // The k-th screen before this one, so many days ago: from there on k screens have gone before.
                var earlier = screen - k;
                var turns = (int)Math.Floor((double)earlier / at.Length);
                var begin = k == 0 ? 0 : at[screen] - at[earlier - (turns * at.Length)] - (turns * period);
                if (begin >= longest) break;
                var (nextFound, nextTaken) = (chain.Found(k) / period, chain.Taken(k) / period);
                steps.TryGetValue(begin, out var step);
                steps[begin] = (step.Found + nextFound - found, step.Taken + nextTaken - taken);
                (found, taken) = (nextFound, nextTaken);
                if (nextTaken < Nobody) break;
            }
        }

        double[] days = [.. steps.Keys, longest];
        var (foundSums, takenSums) = (new double[steps.Count], new double[steps.Count]);
        var (f, t, i) = (0.0, 0.0, 0);
        foreach (var step in steps.Values)
        {
            (f, t) = (Math.Max(f + step.Found, 0), Math.Max(t + step.Taken, 0));
            (foundSums[i], takenSums[i++]) = (f, t);
        }

        return new FirstPositiveDensity(days, foundSums, takenSums);
    }

    private static FirstPositiveDensity Renewal(ScreeningSchedule schedule, ScreeningRules rules, double sensitivity, double longest)
    {
        var people = new PersonChances(rules.MissCorrelation);
        var chances = people.Of(sensitivity);
        var gaps = schedule.Gaps;
        var (number, days) = (gaps.Sum(gap => (double)gap.Count), gaps.Sum(gap => (double)gap.Count * gap.Days));
        var (acted, taking) = (schedule.Participation * rules.FollowThrough, 1 - schedule.NeverTakePart);
        var count = (int)Math.Ceiling(longest);
        var (found, taken) = (new double[count], new double[count]);
        var left = new double[count * people.Count];
        for (var day = 0; day < count; day++)
        {
            var first = gaps.Where(gap => gap.Days > day).Sum(gap => (double)gap.Count) / days;
            for (var i = 0; i < people.Count; i++)
            {
                var screens = first * people.Weights[i];
                foreach (var gap in gaps)
                {
                    if (gap.Days > day) break;
                    screens += gap.Count / number * left[((day - gap.Days) * people.Count) + i];
                }

                found[day] += taking * acted * chances[i] * screens;
                taken[day] += taking * schedule.Participation * screens;
                left[(day * people.Count) + i] = screens * (1 - (acted * chances[i]));
            }
        }

        return new FirstPositiveDensity([.. Enumerable.Range(0, count).Select(day => (double)day), longest], found, taken);
    }

    private static double[] Sum(double[] days, double[] densities)
    {
        var sums = new double[days.Length];
        for (var i = 0; i < densities.Length; i++) sums[i + 1] = sums[i] + (densities[i] * (days[i + 1] - days[i]));
        return sums;
    }
}
