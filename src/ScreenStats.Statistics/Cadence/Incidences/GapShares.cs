using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Courses;

namespace ScreenStats.Statistics.Cadence.Incidences;

/// <summary>How the gaps between a person's consecutive screens are shared out, those longer than a course of infection together.</summary>
internal sealed class GapShares
{
    private readonly (int Length, double Share)[] within;
    private readonly double[] longer;
    private readonly int[] upTo;

    /// <summary>Takes the shares of gaps.</summary>
    /// <param name="gaps">The gaps; lengths may repeat.</param>
    /// <param name="days">Days beyond which it does not matter how long a gap is, 1 or more.</param>
    public GapShares(ImmutableArray<ObservedGap> gaps, int days)
    {
        var counts = new double[days + 1];
        foreach (var gap in gaps)
        {
            counts[Math.Min(gap.Days, days)] += gap.Count;
            Total += gap.Count;
            TotalDays += (double)gap.Days * gap.Count;
        }

        if (Total > 0)
            for (var length = 0; length <= days; length++) counts[length] /= Total;
        within = [.. Enumerable.Range(1, days - 1).Where(length => counts[length] > 0).Select(length => (length, counts[length]))];
        (longer, upTo) = (new double[days + 1], new int[days + 1]);
        for (var day = days - 1; day >= 0; day--) longer[day] = longer[day + 1] + counts[day + 1];
        for (int day = 0, used = 0; day <= days; day++)
        {
            while (used < within.Length && within[used].Length <= day) used++;
            upTo[day] = used;
        }
    }

    /// <summary>How many gaps there are.</summary>
    public double Total { get; }

    /// <summary>The days of all gaps together.</summary>
    public double TotalDays { get; }

    /// <summary>The share of gaps longer than so many days.</summary>
    public double Longer(int day) => longer[day];

    /// <summary>Gaps of up to so many days.</summary>
    public ReadOnlySpan<(int Length, double Share)> UpTo(int day) => within.AsSpan(0, upTo[day]);
}
