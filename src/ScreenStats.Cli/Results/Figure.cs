using ScreenStats.Statistics;

namespace ScreenStats.Cli.Results;

/// <summary>
/// A figure of a result, or why there is none. In JSON: the number, or null with a sibling "&lt;name&gt;Undefined"; limits, where it has them, are
/// siblings "&lt;name&gt;Lower" and "&lt;name&gt;Upper".
/// </summary>
internal readonly record struct Figure
{
    private Figure(double? value, string? reason)
    {
        Value = value;
        Reason = reason;
    }

    public double? Value { get; }

    public string? Reason { get; }

    /// <summary>Its limits; null where it has none, or they stand beside it as figures of their own.</summary>
    public Interval? Limits { get; private init; }

    // Adding zero turns -0 into 0.
    public static Figure Of(double value) => new(value + 0.0, null);

    public static Figure Undefined(string reason) => new(null, reason);

    public static Figure Of(double? value, string? reason) => value is { } some ? Of(some) : Undefined(reason ?? "not computed");

    /// <summary>An estimate with its limits.</summary>
    public static Figure Of(Estimate estimate) => Of(estimate.Value, estimate.Reason?.Describe()) with { Limits = estimate.Interval };

    public Figure WithLimits(Interval? limits) => this with { Limits = limits };
}
