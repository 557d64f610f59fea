namespace ScreenStats.Counting.Rules;

/// <summary>
/// When the time for a specimen is over, as it was known at the end of each day: the reporting lag that the reports of that day and before
/// gave decides, not the one that is known today.
/// </summary>
public sealed class VerificationClock
{
    private readonly int firstDay;
    private readonly long[] limits;
    private readonly long[] lowestFrom;

    private VerificationClock(int firstDay, long[] limits)
    {
        this.firstDay = firstDay;
        this.limits = limits;
        lowestFrom = [.. limits];
        for (var i = limits.Length - 2; i >= 0; i--) lowestFrom[i] = Math.Min(lowestFrom[i], lowestFrom[i + 1]);
    }

    /// <summary>A clock without a confirmatory export: every run is unverified at once.</summary>
    public static VerificationClock None { get; } = new(0, []);

    /// <summary>Makes the clock of a program.</summary>
    /// <param name="firstDay">Number of the first day, no later than the first run's.</param>
    /// <param name="ends">
    /// The last second of each day from then on, on the scale of <see cref="Moment.Instant"/>, ascending, at least one. After the last of them a day has 86,400 seconds.
    /// </param>
    /// <param name="reports">Day and lag in seconds (<see cref="ReportingLag.Seconds"/>) of every recorded report, in any order.</param>
    /// <param name="lagSeconds">The lag while no report is recorded, at least 0.</param>
    /// <returns>The clock.</returns>
    /// <exception cref="ArgumentException">There is no day.</exception>
    public static VerificationClock Of(int firstDay, IReadOnlyList<long> ends, IEnumerable<(int Day, long Seconds)> reports, long lagSeconds)
    {
        if (ends.Count == 0) throw new ArgumentException("A clock has at least one day.", nameof(ends));
        var inOrder = reports.OrderBy(report => report.Day).ToList();
        var ranks = new LagRanks(inOrder.Select(report => report.Seconds));
        var limits = new List<long>(ends.Count);
        var next = 0;
        for (var day = 0; day < ends.Count || next < inOrder.Count; day++)
        {
            for (; next < inOrder.Count && inOrder[next].Day <= firstDay + day; next++) ranks.Add(inOrder[next].Seconds);
            var end = day < ends.Count ? ends[day] : ends[^1] + ((day - ends.Count + 1) * Moment.SecondsPerDay);
            limits.Add(end - (ranks.NearestRank() ?? lagSeconds));
        }

        return new(firstDay, [.. limits]);
    }

    /// <summary>True where at the end of a day no specimen of a run was to be expected any more.</summary>
    /// <param name="closes">Last second at which a specimen could belong to the run, by <see cref="FollowUpWindow.Closes"/>.</param>
    /// <param name="day">Number of the day.</param>
    /// <returns>True for unverified, false for pending, as in <see cref="FollowUpRule.Status"/>.</returns>
    public bool IsOver(long closes, int day) => limits.Length == 0 || closes <= Limit(day - firstDay);

    /// <summary>The next day after one on which the answer of <see cref="IsOver"/> turns.</summary>
    /// <param name="closes">As there.</param>
    /// <param name="day">Number of the day.</param>
    /// <returns>The day; null where it stays so for good.</returns>
    public int? NextTurn(long closes, int day)
    {
        if (limits.Length == 0) return null;
        var now = IsOver(closes, day);
        for (var at = Math.Max(0, day - firstDay + 1); ; at++)
        {
            if (now && (at >= limits.Length || lowestFrom[at] >= closes)) return null;
            if (closes <= Limit(at) != now) return firstDay + at;
        }
    }

    private long Limit(int at) => at < limits.Length ? limits[Math.Max(0, at)] : limits[^1] + ((at - limits.Length + 1) * Moment.SecondsPerDay);

    // The lags so far, by rank among all lags there will be: the nearest rank is found by halving sums (a binary indexed tree).
    private sealed class LagRanks
    {
        private readonly long[] values;
        private readonly int[] counts;
        private int count;

        public LagRanks(IEnumerable<long> all)
        {
            values = [.. all.Distinct().Order()];
            counts = new int[values.Length + 1];
        }

        public void Add(long value)
        {
            for (var at = Array.BinarySearch(values, value) + 1; at < counts.Length; at += at & -at) counts[at]++;
            count++;
        }

        public long? NearestRank()
        {
            if (count == 0) return null;
            var (wanted, at) = (ReportingLag.Rank(count), 0);
            for (var step = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)counts.Length); step > 0; step >>= 1)
            {
                if (at + step >= counts.Length || counts[at + step] >= wanted) continue;
                at += step;
                wanted -= counts[at];
            }

            return values[at];
        }
    }
}
