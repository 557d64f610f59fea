using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Windows;

/// <summary>How many screens fall due within a window that begins at any time: worked out once for a schedule, used for every draw.</summary>
/// <remarks>
/// <para>The chance of n or more screens within t days from any time on: a pattern of period P with screens i = 1, 2, … and gaps G(i) before them:
/// sum over i of min(max(t - l, 0), G(i))/P, l being the days from screen i to the (n - 1)th after it; observed gaps: sum over d of P(n - 1 gaps make d days) Q(t - d),
/// Q(x) the chance that the next screen comes within x days. Both are linear in t between the times at which a screen can enter, so that a table by steps of about an eighth of a day,
/// which divide the interval, or a day, is exact for screens every so many days, on weekdays and under observed gaps.</para>
/// <para>Source: derived; renewal theory, Cox DR, Renewal Theory, 1962 (from memory).</para>
/// </remarks>
public sealed class ScreenCounts
{
    /// <summary>The longest window, in days.</summary>
    public const double LongestDays = 200;

    private const double StepsPerDay = 8;
    private const double Nothing = 1e-12;

    private readonly double step;
    private readonly (int First, double[] Chances)[] rows;

    private ScreenCounts(double step, (int First, double[] Chances)[] rows)
    {
        this.step = step;
        this.rows = rows;
        Most = rows.Max(row => row.First + row.Chances.Length - 1);
    }

    /// <summary>The most screens that fall into the longest window.</summary>
    public int Most { get; }

    /// <summary>The counts of a schedule.</summary>
    /// <param name="schedule">When screens fall due; who takes them is not asked here.</param>
    /// <param name="longestDays">The longest window asked for, 0 to <see cref="LongestDays"/>.</param>
    /// <returns>The counts.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The window is outside its domain.</exception>
    public static ScreenCounts Of(ScreeningSchedule schedule, double longestDays)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        if (!(longestDays is >= 0 and <= LongestDays))
            throw new ArgumentOutOfRangeException(nameof(longestDays), longestDays, "The longest window must be a number of days from 0 to 200.");
        var even = schedule.At.Length == 1;
        var step = even ? schedule.PeriodDays / Math.Ceiling(StepsPerDay * schedule.PeriodDays) : 1 / StepsPerDay;
        var length = (int)Math.Ceiling(longestDays / step) + 1;
        Func<double, int, double> atLeast = schedule.DuePerDay == 0 ? (_, _) => 0 : schedule.Gaps.IsEmpty ? Pattern(schedule) : Gaps(schedule, longestDays);
        var rows = new (int, double[])[length];
        for (var row = 0; row < length; row++) rows[row] = Row(row * step, atLeast);
        return new ScreenCounts(step, rows);
    }

    /// <summary>The counts of people of whom each part follows a schedule of its own.</summary>
    /// <param name="parts">The weight of each part, 0 or more and not all 0, and its counts; all by the same steps, as those of observed gaps are.</param>
    /// <returns>The counts of all together: by the law of total probability.</returns>
    /// <exception cref="ArgumentException">No weight is above 0, or the steps differ.</exception>
    public static ScreenCounts Mixture(IReadOnlyList<(double Weight, ScreenCounts Counts)> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var total = parts.Sum(part => part.Weight);
        if (!(total > 0) || parts.Any(part => !(part.Weight >= 0))) throw new ArgumentException("Weights must be 0 or more, and not all of them 0.", nameof(parts));
        var model = parts[0].Counts;
        if (parts.Any(part => part.Counts.step != model.step || part.Counts.rows.Length != model.rows.Length)) throw new ArgumentException("The counts of all parts must go by the same steps.", nameof(parts));
        var rows = new (int First, double[] Chances)[model.rows.Length];
        for (var row = 0; row < rows.Length; row++)
        {
            var first = parts.Min(part => part.Counts.rows[row].First);
            var chances = new double[parts.Max(part => part.Counts.rows[row].First + part.Counts.rows[row].Chances.Length) - first];
            foreach (var (weight, counts) in parts)
            {
                var (own, shares) = counts.rows[row];
                for (var n = 0; n < shares.Length; n++) chances[own - first + n] += weight / total * shares[n];
            }

            rows[row] = (first, chances);
        }

        return new ScreenCounts(model.step, rows);
    }

    /// <summary>The mean, over how many screens there are, of a figure for each number of them, by steps: to be interpolated.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal double[] Means(ReadOnlySpan<double> byNumber, double days)
    {
        var length = Math.Min(rows.Length, (int)Math.Ceiling(days / step) + 2);
        var means = new double[length];
        for (var row = 0; row < length; row++)
        {
            var (first, chances) = rows[row];
            var sum = 0.0;
            for (var n = 0; n < chances.Length; n++) sum += chances[n] * byNumber[first + n];
            means[row] = sum;
        }

        return means;
    }

    /// <summary>The figure of <see cref="Means"/> at a number of days.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal double At(double[] means, double days)
    {
        var place = days / step;
        var below = Math.Min((int)place, means.Length - 1);
        return below + 1 >= means.Length ? means[^1] : means[below] + ((place - below) * (means[below + 1] - means[below]));
    }

    private static (int First, double[] Chances) Row(double days, Func<double, int, double> atLeast)
    {
        var chances = new List<double>();
        var (first, before) = (0, 1.0);
        for (var n = 1; ; n++)
        {
            var next = Math.Clamp(atLeast(days, n), 0, before);
            if (chances.Count == 0 && before - next < Nothing && next > Nothing)
            {
                first = n;
            }
            else
            {
                chances.Add(before - next);
            }

            before = next;
            if (next <= Nothing) break;
        }

        return (first, [.. chances]);
    }

    private static Func<double, int, double> Pattern(ScreeningSchedule schedule)
    {
        var (at, period) = (schedule.At, schedule.PeriodDays);
        double Later(int screen, int number) => at[(screen + number) % at.Length] - at[screen] + (period * ((screen + number) / at.Length));
        return (days, n) =>
        {
            var sum = 0.0;
            for (var screen = 0; screen < at.Length; screen++)
            {
                var gap = at[screen] - (screen > 0 ? at[screen - 1] : at[^1] - period);
                sum += Math.Clamp(days - Later(screen, n - 1), 0, gap);
            }

            return sum / period;
        };
    }

    private static Func<double, int, double> Gaps(ScreeningSchedule schedule, double longestDays)
    {
        var gaps = schedule.Gaps;
        var (number, total) = (gaps.Sum(gap => (double)gap.Count), gaps.Sum(gap => (double)gap.Count * gap.Days));
        var days = (int)Math.Ceiling(longestDays) + 1;
        // Within: the chance that the next screen comes within so many whole days.
        var within = new double[days + 2];
        for (var day = 0; day <= days; day++) within[day + 1] = within[day] + (gaps.Where(gap => gap.Days > day).Sum(gap => (double)gap.Count) / total);
        var sums = new List<double[]> { new double[days + 1] };
        sums[0][0] = 1;
        double[] Sum(int count)
        {
            while (sums.Count <= count)
            {
                var (last, next) = (sums[^1], new double[days + 1]);
                foreach (var gap in gaps.Where(gap => gap.Days <= days))
                {
                    for (var day = gap.Days; day <= days; day++) next[day] += last[day - gap.Days] * (gap.Count / number);
                }

                sums.Add(next);
            }

            return sums[count];
        }

        return (t, n) =>
        {
            var sum = 0.0;
            var made = Sum(n - 1);
            for (var day = 0; day <= days && day < t; day++)
            {
                if (made[day] == 0) continue;
                var left = t - day;
                var whole = (int)left;
                sum += made[day] * (within[whole] + ((left - whole) * (within[whole + 1] - within[whole])));
            }

            return sum;
        };
    }
}
