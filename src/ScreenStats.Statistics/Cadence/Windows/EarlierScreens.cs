using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Windows;

/// <summary>
/// How many screens came before one of them within so many whole days, under observed gaps and with first screens of people among them: what
/// an earlier screen may have found already.
/// </summary>
/// <remarks>
/// A screen is a person's first with chance f; else the one before lies a gap back. With w(g) the share of gap g: B(0, k) = f + (1 - f) sum of w(g) over g &gt; k;
/// B(n, k) = (1 - f) sum over g ≤ k of w(g) B(n - 1, k - g). The same renewal as in <see cref="Incidences.WorkplaceIncidence"/>.
/// </remarks>
public sealed class EarlierScreens
{
    private readonly double[][] byDay;

    private EarlierScreens(double screens, double[][] byDay)
    {
        Screens = screens;
        this.byDay = byDay;
        Most = byDay.Max(row => row.Length - 1);
    }

    /// <summary>All screens: first ones, and one at the end of each gap.</summary>
    public double Screens { get; }

    /// <summary>The most screens that can have come before.</summary>
    public int Most { get; }

    /// <summary>The last day into a window that the counts reach.</summary>
    public int LongestDay => byDay.Length - 1;

    /// <summary>The counts of a program.</summary>
    /// <param name="people">People whose first screen is among the screens, 0 or more.</param>
    /// <param name="gaps">Days between a person's consecutive screens, with counts.</param>
    /// <param name="longestDays">The longest window asked for, 0 to <see cref="ScreenCounts.LongestDays"/>.</param>
    /// <returns>The counts.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static EarlierScreens Of(long people, ImmutableArray<ObservedGap> gaps, double longestDays)
    {
        Guard.NotNegative(people);
        if (gaps.IsDefault) throw new ArgumentNullException(nameof(gaps));
        if (!(longestDays is >= 0 and <= ScreenCounts.LongestDays))
            throw new ArgumentOutOfRangeException(nameof(longestDays), longestDays, "The longest window must be a number of days from 0 to 200.");
        var number = gaps.Sum(gap => (double)gap.Count);
        var screens = people + number;
        var first = screens == 0 ? 1 : people / screens;
        var byDay = new double[(int)Math.Ceiling(longestDays) + 1][];
        for (var day = 0; day < byDay.Length; day++)
        {
            var row = new double[day + 1];
            row[0] = first + (number == 0 ? 0 : (1 - first) * gaps.Where(gap => gap.Days > day).Sum(gap => (double)gap.Count) / number);
            foreach (var gap in gaps.Where(gap => gap.Days <= day && gap.Count > 0))
            {
                var earlier = byDay[day - gap.Days];
                for (var n = 0; n < earlier.Length; n++) row[n + 1] += (1 - first) * (gap.Count / number) * earlier[n];
            }

            byDay[day] = row;
        }

        return new EarlierScreens(screens, byDay);
    }

    /// <summary>The counts of several programs, each with gaps of its own, together.</summary>
    /// <param name="parts">One or more, asked for the same longest window.</param>
    /// <returns>The counts of all screens, each program by its number of them.</returns>
    /// <exception cref="ArgumentException">There is none, or the windows differ.</exception>
    public static EarlierScreens Together(IReadOnlyList<EarlierScreens> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        if (parts.Count == 0 || parts.Any(part => part.byDay.Length != parts[0].byDay.Length)) throw new ArgumentException("There must be parts, all for the same longest window.", nameof(parts));
        var screens = parts.Sum(part => part.Screens);
        if (screens == 0) return parts[0];
        var byDay = new double[parts[0].byDay.Length][];
        for (var day = 0; day < byDay.Length; day++)
        {
            byDay[day] = new double[day + 1];
            foreach (var part in parts)
                for (var n = 0; n <= day; n++) byDay[day][n] += part.Screens / screens * part.byDay[day][n];
        }

        return new EarlierScreens(screens, byDay);
    }

    /// <summary>The mean, over how many came before, of a figure for each number of them, for a screen in the so manieth day of a window.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal double Mean(ReadOnlySpan<double> byNumber, int day)
    {
        var row = byDay[day];
        var sum = 0.0;
        for (var n = 0; n < row.Length; n++) sum += row[n] * byNumber[n];
        return sum;
    }
}
