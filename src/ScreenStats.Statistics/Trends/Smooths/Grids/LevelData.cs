using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Trends.Smooths.Grids;

/// <summary>The counts of a smooth, one entry a period in order of time, and what a lattice needs to know of them.</summary>
internal sealed class LevelData
{
    public LevelData(PeriodCount[] periods, LevelStart start)
    {
        Periods = periods;
        Start = start;
        Gaps = [.. periods.Select((period, i) => i == 0 ? 0 : period.Period - periods[i - 1].Period)];
        Events = periods.Sum(period => period.Events);
        Trials = periods.Sum(period => period.Trials);
        Coefficients = periods.Sum(Coefficient);
        var pooled = (Events + 0.5) / (Trials + 1);
        double Information(PeriodCount period)
        {
            var own = (period.Events + 0.5) / (period.Trials + 1);
            return period.Trials * Math.Max(own * (1 - own), pooled * (1 - pooled));
        }

        // What the start says counts as said in the first period.
        var first = start.Deviation is { } deviation ? 1 / (deviation * deviation) : (start.Events + start.Others) / 4;
        MostInformation = periods.Length == 0 ? first : periods.Max(Information) + first;
        AllInformation = periods.Sum(Information) + first;
    }

    public PeriodCount[] Periods { get; }

    public LevelStart Start { get; }

    /// <summary>Periods since the entry before; 0 for the first.</summary>
    public long[] Gaps { get; }

    public double Events { get; }

    public double Trials { get; }

    /// <summary>The sum of the logarithms of the binomial coefficients.</summary>
    public double Coefficients { get; }

    /// <summary>What the most telling period says of its logit, as one over a variance.</summary>
    public double MostInformation { get; }

    public double AllInformation { get; }

    public double Span => Periods.Length == 0 ? 0 : Periods[^1].Period - Periods[0].Period;

    /// <summary>All counts as one period: what is left where the rate is constant.</summary>
    public LevelData Pooled(int periods)
    {
        double events = 0, trials = 0;
        for (var i = 0; i < periods; i++) (events, trials) = (events + Periods[i].Events, trials + Periods[i].Trials);
        return new LevelData([new PeriodCount(0, Math.Min(events, trials), trials)], Start);
    }

    /// <summary>Where the logits of all periods lie but for a part of 1e-16.</summary>
    public (double Low, double High) Range(double sigma)
    {
        var logits = Periods.Where(period => period.Trials > 0).Select(period => Math.Log((period.Events + 0.5) / (period.Trials - period.Events + 0.5))).ToList();
        if (Start.Mean is { } mean) logits.Add(mean);
        if (Start.Events > 0) logits.Add(Math.Log(Start.Events / Start.Others));
        var (events, others) = (First(Start.Events, period => period.Events), First(Start.Others, period => period.Trials - period.Events));
        var spread = Start.Deviation is { } deviation ? 9 * deviation : double.PositiveInfinity;

        // A likelihood of x events and m others falls by 45 within 45 / x below its top, and 45 / m above it, beside what a normal one needs.
        var normal = Math.Sqrt(90 * (events + others) / (events * others));
        double Tail(double seen) => Math.Min(spread, (45 / seen) + normal);
        var low = logits.Min() - Tail(events) - (9 * sigma * Math.Sqrt(Stretch(period => period.Events)));
        var high = logits.Max() + Tail(others) + (9 * sigma * Math.Sqrt(Stretch(period => period.Trials - period.Events)));

        // Before any count only the start says where the logit lies.
        return Start.Mean is { } centre ? (Math.Min(low, centre - spread), Math.Max(high, centre + spread)) : (low, high);
    }

    private double First(double start, Func<PeriodCount, double> of) =>
        Math.Max(1e-9, start > 0 ? start : Periods.Select(of).FirstOrDefault(count => count > 0));

    /// <summary>The longest stretch without such a count, in periods.</summary>
    private double Stretch(Func<PeriodCount, double> of)
    {
        if (Periods.Length < 2) return 0;
        var (last, longest) = (Periods[0].Period, 1L);
        foreach (var period in Periods)
        {
            if (of(period) <= 0) continue;
            longest = Math.Max(longest, period.Period - last);
            last = period.Period;
        }

        return Math.Max(longest, Periods[^1].Period - last);
    }

    private static double Coefficient(PeriodCount period)
    {
        var (x, n) = (period.Events, period.Trials);
        if (x == 0 || x == n) return 0;
        var (p, q) = (x / n, (n - x) / n);
        return Binomial.LogProbability(x, n, p, q) - (x * Math.Log(p)) - ((n - x) * Math.Log(q));
    }
}
