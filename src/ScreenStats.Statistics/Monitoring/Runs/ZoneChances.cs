using MathNet.Numerics;
using ScreenStats.Statistics.Monitoring.Charts;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>The chances of a point by its distance from the centre: on one side only, farther than one and two standard errors, outside the limits.</summary>
/// <param name="Near">On the side, at most one standard error off; [0] below, [1] above the centre. The other arrays likewise.</param>
/// <param name="Off">More than one, at most two.</param>
/// <param name="Far">More than two, inside the limits.</param>
/// <param name="Outside">Outside the limits.</param>
/// <param name="On">On neither side.</param>
internal sealed record ZoneChances(double[] Near, double[] Off, double[] Far, double[] Outside, double On)
{
    /// <summary>Independent normal values whose mean lies the given number of standard errors off the centre.</summary>
    public static ZoneChances Normal(double shift)
    {
        var (below, above) = (Side(-shift), Side(shift));
        return From(below, above);

        static double[] Side(double shift) => [Tail(0 - shift), Tail(1 - shift), Tail(2 - shift), Tail(3 - shift)];
    }

    /// <summary>Counts on a chart with exact limits around one proportion while another is true.</summary>
    public static ZoneChances Binomial(long trials, double centre, double rate, double tail)
    {
        var (fewest, most) = CountLimits.BinomialInside(trials, centre, tail);
        var standing = new Func<long, Standing>(x => Standing.FromTails(CountLimits.BinomialOrMore(x, trials, centre), CountLimits.BinomialOrLess(x, trials, centre)));
        var above = new double[4];
        var below = new double[4];
        for (var zone = 0; zone < 3; zone++)
        {
            var distance = zone == 0 ? -1.0 : zone;
            var first = CountLimits.First(0, trials + 1, x => standing(x) is { Side: ChartSide.Above } s && s.Beyond(distance));
            var last = CountLimits.First(0, trials + 1, x => !(standing(x) is { Side: ChartSide.Below } s && s.Beyond(distance))) - 1;
            above[zone] = CountLimits.BinomialOrMore(first, trials, rate);
            below[zone] = CountLimits.BinomialOrLess(last, trials, rate);
        }

        above[3] = CountLimits.BinomialOrMore(most + 1, trials, rate);
        below[3] = CountLimits.BinomialOrLess(fewest - 1, trials, rate);
        return From(below, above);
    }

    private static ZoneChances From(double[] below, double[] above)
    {
        return new ZoneChances(
            [Between(below, 0), Between(above, 0)],
            [Between(below, 1), Between(above, 1)],
            [Between(below, 2), Between(above, 2)],
            [below[3], above[3]],
            Math.Max(0, 1 - below[0] - above[0]));

        // Limits set closer than two standard errors leave nothing between.
        static double Between(double[] side, int zone) => Math.Max(0, side[zone] - Math.Max(side[zone + 1], side[3]));
    }

    private static double Tail(double z) => 0.5 * SpecialFunctions.Erfc(z / Math.Sqrt(2));
}
