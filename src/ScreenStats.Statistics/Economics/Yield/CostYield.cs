namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>What a program pays for each screen, case, infectious day removed or infection averted.</summary>
/// <remarks>
/// Cost over number. The bounds take every price and number at the end that makes it least or most: they hold whatever the ranges have to do with one another, and are wider than an interval that holds a
/// chance (for that draw the figures, <c>Economics.Uncertainty</c>). Where a price is missing, the rest gives a lower bound and no value. Source: definitions.
/// </remarks>
public static class CostYield
{
    /// <summary>The name of the method in tables.</summary>
    public const string Method = "cost-over-number";

    /// <summary>The cost for each.</summary>
    /// <param name="cost">The program's cost.</param>
    /// <param name="number">How many of it, in the same time; with a range where it is estimated.</param>
    /// <returns>The cost for each with its bounds; undefined where there is none to share the cost, or a price is missing.</returns>
    public static UnitCost Per(ProgramCost cost, StatedAmount number)
    {
        ArgumentNullException.ThrowIfNull(cost);
        var lower = Ratio(cost.Lower, number.Upper);
        var upper = cost.IsComplete ? Ratio(cost.Upper, number.Lower) : null;
        var value = cost.IsComplete ? Ratio(cost.Value, number.Value) : null;
        UndefinedReason Why(double divisor) => !cost.IsComplete ? UndefinedReason.CostUnknown : divisor == 0 ? UndefinedReason.NoEffect : UndefinedReason.TooLarge;
        return new UnitCost(
            value, lower, upper, value is null ? Why(number.Value) : null, upper is null ? Why(number.Lower) : null);
    }

    private static double? Ratio(double amount, double number) => number > 0 && double.IsFinite(amount / number) ? amount / number : null;
}
