namespace ScreenStats.Statistics.Trends.SlopeChanges.Search;

/// <summary>The periods with trials, in order of time, on an inner scale on which they lie around 0 and span about 2.</summary>
internal sealed class LineData
{
    private readonly double[] events;
    private readonly double[] others;

    private LineData(TimedCount[] rows)
    {
        Rows = rows;
        var (first, last) = (rows[0].Time, rows[^1].Time);
        Centre = (first / 2) + (last / 2);
        Unit = last > first ? (last / 2) - (first / 2) : 1;
        Times = Array.ConvertAll(rows, row => (row.Time - Centre) / Unit);
        Events = Array.ConvertAll(rows, row => row.Events);
        Trials = Array.ConvertAll(rows, row => row.Trials);
        Places = [.. Times.Distinct()];
        Outer = [.. rows.Select(row => row.Time).Distinct()];
        (events, others) = (new double[Places.Length + 1], new double[Places.Length + 1]);
        FirstAfter = new int[Places.Length];
        var row = 0;
        for (var place = 0; place < Places.Length; place++)
        {
            (events[place + 1], others[place + 1]) = (events[place], others[place]);
            for (; row < rows.Length && Times[row] == Places[place]; row++)
            {
                events[place + 1] += Events[row];
                others[place + 1] += Trials[row] - Events[row];
            }

            FirstAfter[place] = row;
        }
    }

    /// <summary>The rows used.</summary>
    public TimedCount[] Rows { get; }

    public double Centre { get; }

    public double Unit { get; }

    public double[] Times { get; }

    public double[] Events { get; }

    public double[] Trials { get; }

    /// <summary>The different times, in order.</summary>
    public double[] Places { get; }

    /// <summary>The same in the caller's unit, untouched by rounding.</summary>
    public double[] Outer { get; }

    /// <summary>For each place the first row after it.</summary>
    public int[] FirstAfter { get; }

    /// <summary>The rows with trials, whatever the order given, so that sums do not depend on it; null without any.</summary>
    public static LineData? Of(IReadOnlyList<TimedCount> counts)
    {
        TimedCount[] rows = [.. counts.Where(count => count.Trials > 0).OrderBy(count => count.Time).ThenBy(count => count.Trials).ThenBy(count => count.Events)];
        return rows.Length == 0 ? null : new LineData(rows);
    }

    /// <summary>A place back in the caller's unit.</summary>
    public double Outside(double place)
    {
        var at = Array.BinarySearch(Places, place);
        return at >= 0 ? Outer[at] : Centre + (Unit * place);
    }

    /// <summary>The place at or the last before a value; -1 before the first.</summary>
    public int Cell(double value)
    {
        var at = Array.BinarySearch(Places, value);
        return at >= 0 ? at : ~at - 1;
    }

    /// <summary>Whether each segment has enough periods, and strictly inside an event and a trial without one, the periods next to a change left out.</summary>
    /// <remarks>
    /// A change on a period leaves that period out, one between two periods both of them: what is allowed between two periods is then allowed on both. Were they
    /// counted, a segment whose only event lies in its first period could be made as steep as one likes by moving the change up to that period: no maximum.
    /// </remarks>
    public bool Admits(double[] knots, int least)
    {
        for (var k = 0; k <= knots.Length; k++)
        {
            if (!Admits(k == 0 ? double.NegativeInfinity : knots[k - 1], k == knots.Length ? double.PositiveInfinity : knots[k], least)) return false;
        }

        return true;
    }

    public bool Admits(double from, double to, int least)
    {
        if (!(to > from)) return false;
        var (low, high) = (Array.BinarySearch(Places, from), Array.BinarySearch(Places, to));
        var (firstClosed, firstOpen) = low >= 0 ? (low, low + 1) : (~low, double.IsFinite(from) ? ~low + 1 : ~low);
        var (endClosed, endOpen) = high >= 0 ? (high + 1, high) : (~high, double.IsFinite(to) ? ~high - 1 : ~high);
        return endClosed - firstClosed >= least && endOpen > firstOpen && events[endOpen] > events[firstOpen] && others[endOpen] > others[firstOpen];
    }
}
