using System.Collections.Immutable;
using ScreenStats.Statistics.Economics.Uncertainty.Information;

namespace ScreenStats.Statistics.Economics.Uncertainty.Acceptability;

/// <summary>How likely each option is the best, over values of an effect.</summary>
/// <remarks>
/// In each draw the option with the highest net monetary benefit counts; of several that are equal the first. The acceptability frontier follows the option with the highest mean. A chance
/// below one half does not speak against an option: with several options the best of them may seldom win by itself.
/// Source: van Hout BA et al., Health Econ 1994;3:309-319; Fenwick E, Claxton K, Sculpher M, Health Econ 2001;10:779-787 (both from memory).
/// </remarks>
public static class AcceptabilityCurve
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "share-of-draws-with-highest-net-benefit";

    /// <summary>The curve.</summary>
    /// <param name="options">The draws of one or more options, all of the same length.</param>
    /// <param name="valuesOfEffect">Values of one effect, each from 0 to 1e15.</param>
    /// <returns>One point for each value, in the order given.</returns>
    /// <exception cref="ArgumentException">No option, or draws of different length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its domain.</exception>
    public static ImmutableArray<AcceptabilityPoint> Of(IReadOnlyList<OptionDraws> options, IEnumerable<double> valuesOfEffect)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(valuesOfEffect);
        return [.. valuesOfEffect.Select(value => At(NetBenefitTable.Of(options, value), value))];
    }

    private static AcceptabilityPoint At(NetBenefitTable table, double value)
    {
        var wins = new int[table.Options];
        for (var draw = 0; draw < table.Draws; draw++)
        {
            var best = 0;
            for (var option = 1; option < table.Options; option++)
            {
                if (table.Rows[option][draw] > table.Rows[best][draw]) best = option;
            }

            wins[best]++;
        }

        return new AcceptabilityPoint(value, [.. wins.Select(won => (double)won / table.Draws)], table.Means, table.Best, table.Draws);
    }
}
