using System.Collections.Immutable;

namespace ScreenStats.Counting.Programs.Reading.Costs;

/// <summary>Every key of the section on costs. The shipped schema names the same ones (tested).</summary>
internal static class CostKeys
{
    public static ImmutableArray<string> Costs { get; } =
    [
        "currency", "priceYear", "perspective", "discountRate", "kit", "operatorMinutes", "operatorHour", "supervision", "waste", "screen",
        "confirmatoryTest", "isolationDay", "workingDay", "illness", "outbreak", "infectionAverted", "infectiousDay", "pooling", "rules", "report", "source",
    ];

    /// <summary>What a screen's cost is made of; not stated where it is stated as one figure.</summary>
    public static ImmutableArray<string> PartsOfScreen { get; } = ["kit", "operatorMinutes", "operatorHour", "supervision", "waste"];

    public static ImmutableArray<string> Pooling { get; } = ["most"];

    public static ImmutableArray<string> Rule { get; } = ["above", "option"];

    public static ImmutableArray<string> Report { get; } =
    [
        "background", "analysisPlan", "population", "setting", "comparators", "horizon", "discounting", "outcomes", "valuation", "resources",
        "heterogeneity", "distribution", "engagement", "engagementEffect", "limitations", "funding", "conflicts",
    ];
}
