using System.Collections.Immutable;
using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Economics.Turning;

/// <summary>The value of a figure at which a gain turns from below 0 to above, or back, found by search: for models without a closed form.</summary>
/// <remarks>
/// The gain is looked at in equal steps between the ends, and each change of sign is closed in on. Two changes within one step stay unseen: the gain should rise or fall throughout, or change slowly.
/// Source: bisection with inverse interpolation (Brent 1973, from memory).
/// </remarks>
public static class TurningPoint
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "search";

    /// <summary>Finds it.</summary>
    /// <param name="net">The gain after costs at a value of the figure; finite within the ends.</param>
    /// <param name="lower">The lowest value that the figure can take, finite.</param>
    /// <param name="upper">The highest one, above the lowest.</param>
    /// <param name="steps">Steps between the ends, 1 to 100,000.</param>
    /// <returns>
    /// The value at which the gain is 0, to the last bits; undefined where it is above 0 throughout (or never below), never above 0, or changes sign more than once.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An end or a number of steps outside its domain.</exception>
    /// <exception cref="ArgumentException">The gain is not finite somewhere.</exception>
    public static Estimate Of(Func<double, double> net, double lower, double upper, int steps = 200)
    {
        var turns = Turns(net, lower, upper, steps, out var last);
        return turns.Count switch
        {
            0 => Estimate.Undefined(last > 0 ? UndefinedReason.AlwaysPays : UndefinedReason.NeverPays),
            1 => Estimate.Point(turns[0].Value, Method),
            _ => Estimate.Undefined(UndefinedReason.PaysInPieces),
        };
    }

    /// <summary>Finds every one of them.</summary>
    /// <param name="net">As in <see cref="Of"/>.</param>
    /// <param name="lower">As there.</param>
    /// <param name="upper">As there.</param>
    /// <param name="steps">As there.</param>
    /// <returns>Each value at which the gain is 0 and changes its sign, the lowest first, to the last bits; none where it changes nowhere. They rise and fall in turns.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An end or a number of steps outside its domain.</exception>
    /// <exception cref="ArgumentException">The gain is not finite somewhere.</exception>
    public static ImmutableArray<TurningPlace> All(Func<double, double> net, double lower, double upper, int steps = 200) => [.. Turns(net, lower, upper, steps, out _)];

    private static List<TurningPlace> Turns(Func<double, double> net, double lower, double upper, int steps, out int last)
    {
        ArgumentNullException.ThrowIfNull(net);
        Guard.Finite(lower);
        Guard.Finite(upper);
        if (!(upper > lower) || !double.IsFinite(upper - lower)) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must lie above the lower end.");
        if (steps is < 1 or > 100_000) throw new ArgumentOutOfRangeException(nameof(steps), steps, "The steps must lie between 1 and 100,000.");
        double Net(double value)
        {
            var found = net(value);
            return double.IsFinite(found) ? found : throw new ArgumentException("The gain must be finite between the ends.", nameof(net));
        }

        var turns = new List<TurningPlace>();
        var lastAt = lower;
        last = 0;
        for (var step = 0; step <= steps; step++)
        {
            var at = step == steps ? upper : lower + ((upper - lower) * ((double)step / steps));
            var found = Math.Sign(Net(at));
            if (found == 0) continue;
            if (last != 0 && found != last) turns.Add(new TurningPlace(Root.Between(Net, lastAt, at), found > 0));
            (last, lastAt) = (found, at);
        }

        return turns;
    }
}
