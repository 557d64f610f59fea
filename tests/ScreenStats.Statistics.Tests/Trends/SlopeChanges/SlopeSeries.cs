using ScreenStats.Statistics.Trends;

namespace ScreenStats.Statistics.Tests.Trends.SlopeChanges;

/// <summary>Series with known or drawn changes of slope.</summary>
internal static class SlopeSeries
{
    /// <summary>12 to 45 periods, a few without trials, around a line with a change.</summary>
    public static readonly Gen<TimedCount[]> Drawn = Gen.Select(Gen.Int[12, 45], Gen.Double[-4, 0], Gen.Double[-4, 4], Gen.Double[-4, 4], Gen.Int[20, 800], Gen.Double[0, 1].Array[45])
        .Select((periods, level, before, after, trials, parts) => (TimedCount[])[.. Enumerable.Range(0, periods).Select(i =>
        {
            var part = (double)i / periods;
            var logit = level + (before * part) + ((after - before) * Math.Max(0, part - 0.5)) + ((parts[i] - 0.5) * 0.8);
            var n = parts[(i * 7) % 45] < 0.05 ? 0 : trials + Math.Floor(parts[(i * 11) % 45] * 30);
            return new TimedCount(i, Math.Round(n / (1 + Math.Exp(-logit))), n);
        })]);

    /// <summary>Expected counts of a line: its logit at 0, then (from, change of slope).</summary>
    public static TimedCount[] Line(int periods, double trials, double level, (double From, double Slope)[] parts) =>
        [.. Enumerable.Range(0, periods).Select(i => new TimedCount(i, trials / (1 + Math.Exp(-level - parts.Sum(part => part.Slope * Math.Max(0, i - part.From)))), trials))];

    /// <summary>The rule of segments, written again.</summary>
    public static bool Admits(TimedCount[] counts, double[] knots, int least)
    {
        double[] bounds = [double.NegativeInfinity, .. knots, double.PositiveInfinity];
        var used = counts.Where(count => count.Trials > 0).ToList();
        double[] times = [.. used.Select(count => count.Time)];
        bool Touches(double time, double knot) => time == knot || (!times.Contains(knot) && (time == times.Where(t => t < knot).DefaultIfEmpty(knot).Max() || time == times.Where(t => t > knot).DefaultIfEmpty(knot).Min()));
        return Enumerable.Range(0, knots.Length + 1).All(s =>
        {
            var inside = used.Where(count => count.Time > bounds[s] && count.Time < bounds[s + 1] && !knots.Any(knot => Touches(count.Time, knot))).ToList();
            return used.Count(count => count.Time >= bounds[s] && count.Time <= bounds[s + 1]) >= least && inside.Sum(count => count.Events) > 0 && inside.Sum(count => count.Trials - count.Events) > 0;
        });
    }
}
