using System.Collections.Immutable;

namespace ScreenStats.Reporting.Pages.WhatIf;

/// <summary>The values at which sliders stop: round ones, closer together where a small step matters.</summary>
internal static class WhatIfStops
{
    public const string Days = "days-between-screens";

    /// <summary>Prevalences from 1 in 100,000 to a half, ten to a factor of ten.</summary>
    public static ImmutableArray<double> Prevalence { get; } =
    [
        .. from power in Enumerable.Range(0, 5) from digits in new[] { 10, 12, 15, 20, 25, 30, 40, 50, 60, 80 }
        let value = digits * Tens(power) / 1_000_000m where value <= 0.5m select (double)value,
    ];

    /// <summary>Sensitivities by whole per cent.</summary>
    public static ImmutableArray<double> Sensitivity { get; } = [.. Steps(20m, 100m, 1m)];

    /// <summary>Specificities, closer together near 1.</summary>
    public static ImmutableArray<double> Specificity { get; } = [.. Steps(80m, 94m, 1m), .. Steps(95m, 98.8m, 0.2m), .. Steps(99m, 99.85m, 0.05m), .. Steps(99.9m, 99.99m, 0.01m)];

    /// <summary>Whole days.</summary>
    public static ImmutableArray<double> WholeDays { get; } = [.. Enumerable.Range(1, 28).Select(day => (double)day)];

    // In decimals, so that a stop is the number that a reader would type.
    private static IEnumerable<double> Steps(decimal first, decimal last, decimal step)
    {
        for (var value = first; value <= last; value += step) yield return (double)(value / 100);
    }

    private static decimal Tens(int power) => power == 0 ? 1 : 10 * Tens(power - 1);
}
