namespace ScreenStats.Statistics.Economics.Uncertainty.OneWay;

/// <summary>What one parameter does to the outcome between its ends, the others at their values.</summary>
/// <param name="Index">The place of the parameter in the list given, from 0.</param>
/// <param name="AtLower">The outcome with the parameter at its lower end; null where it has none.</param>
/// <param name="AtUpper">The outcome with the parameter at its upper end; null where it has none.</param>
public sealed record OneWaySwing(int Index, double? AtLower, double? AtUpper)
{
    /// <summary>The distance between both outcomes; null where one of them is missing.</summary>
    public double? Swing => AtLower is { } lower && AtUpper is { } upper ? Math.Abs(upper - lower) : null;
}
