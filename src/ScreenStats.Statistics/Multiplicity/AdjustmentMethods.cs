namespace ScreenStats.Statistics.Multiplicity;

/// <summary>Names of the adjustments, as they stand in tables and on the command line.</summary>
public static class AdjustmentMethods
{
    /// <summary>All methods, in the order of the enumeration.</summary>
    public static IReadOnlyList<AdjustmentMethod> All { get; } =
    [
        AdjustmentMethod.Bonferroni, AdjustmentMethod.Holm, AdjustmentMethod.Hochberg, AdjustmentMethod.Hommel,
        AdjustmentMethod.BenjaminiHochberg, AdjustmentMethod.BenjaminiYekutieli,
    ];

    /// <summary>The method's name.</summary>
    /// <param name="method">The method.</param>
    /// <returns>For instance <c>benjamini-hochberg</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Name(this AdjustmentMethod method) => method switch
    {
        AdjustmentMethod.Bonferroni => "bonferroni",
        AdjustmentMethod.Holm => "holm",
        AdjustmentMethod.Hochberg => "hochberg",
        AdjustmentMethod.Hommel => "hommel",
        AdjustmentMethod.BenjaminiHochberg => "benjamini-hochberg",
        AdjustmentMethod.BenjaminiYekutieli => "benjamini-yekutieli",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows."),
    };

    /// <summary>What the method keeps below the level.</summary>
    /// <param name="method">The method.</param>
    /// <returns>A clause without capital or full stop.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Controls(this AdjustmentMethod method) => method switch
    {
        AdjustmentMethod.Bonferroni or AdjustmentMethod.Holm => "chance of any false finding, whatever the dependence",
        AdjustmentMethod.Hochberg or AdjustmentMethod.Hommel => "chance of any false finding, if independent or positively dependent",
        AdjustmentMethod.BenjaminiHochberg => "expected share of false findings, if independent or positively dependent",
        AdjustmentMethod.BenjaminiYekutieli => "expected share of false findings, whatever the dependence",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows."),
    };
}
