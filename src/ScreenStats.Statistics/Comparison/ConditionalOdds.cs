namespace ScreenStats.Statistics.Comparison;

/// <summary>The odds ratio given both margins: its most likely value and its exact limits, by Newton steps on the logarithm.</summary>
internal static class ConditionalOdds
{
    /// <summary>The odds ratio at which the observed number is the expected one. Needs a number strictly between its bounds.</summary>
    public static double MostLikely(TwoProportions counts)
    {
        var table = new ConditionalTable(counts);
        return Solve(Guess(counts), logarithm =>
        {
            var above = table.Above(logarithm);
            var below = table.Below(logarithm);
            var all = 1 + above.Sum + below.Sum;
            var mean = (above.First - below.First) / all;
            if (!double.IsFinite(mean)) return (double.IsInfinity(above.First) ? 1 : -1, double.NaN);
            return (mean, ((above.Second + below.Second) / all) - (mean * mean));
        });
    }

    /// <summary>The odds ratio at which the chance of at least the observed number is the tail. Needs a number above its lowest.</summary>
    public static double Lower(TwoProportions counts, double tail, double z)
    {
        var table = new ConditionalTable(counts);
        var target = Math.Log(tail);
        var spread = Math.Sqrt(1 / (counts.FirstSuccesses + 0.5) + 1 / (counts.FirstFailures + 0.5) + 1 / (counts.SecondSuccesses + 0.5) + 1 / (counts.SecondFailures + 0.5));
        return Solve(Guess(counts) - (z * spread), logarithm =>
        {
            var above = table.Above(logarithm);
            var below = table.Below(logarithm);
            if (double.IsInfinity(above.Second)) return (-target, double.NaN);
            if (double.IsInfinity(below.Second)) return (double.NegativeInfinity, double.NaN);
            var upper = 1 + above.Sum;
            var all = upper + below.Sum;
            return (Math.Log(upper / all) - target, (above.First / upper) - ((above.First - below.First) / all));
        });
    }

    private static double Guess(TwoProportions counts) => Math.Log(
        (counts.FirstSuccesses + 0.5) / (counts.FirstFailures + 0.5) / ((counts.SecondSuccesses + 0.5) / (counts.SecondFailures + 0.5)));

    /// <summary>The root of a rising function of the logarithm, from its value and slope; a slope that is no number means "bisect".</summary>
    private static double Solve(double start, Func<double, (double Value, double Slope)> function)
    {
        var low = double.NegativeInfinity;
        var high = double.PositiveInfinity;
        var point = start;
        var widen = 1.0;
        for (var step = 0; step < 200; step++)
        {
            var (value, slope) = function(point);
            if (value > 0) high = point;
            else low = point;
            var next = point - (value / slope);
            if (Math.Abs(next - point) < 1e-9) return Math.Exp(next);
            if (!(next > low && next < high && Math.Abs(next - point) < 20))
            {
                next = double.IsInfinity(low) ? point - widen : double.IsInfinity(high) ? point + widen : (low + high) / 2;
                widen *= 2;
            }

            point = next;
        }

        return Math.Exp(point);
    }
}
