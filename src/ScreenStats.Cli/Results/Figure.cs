namespace ScreenStats.Cli.Results;

/// <summary>A figure of a result, or why there is none. In JSON: the number, or null with a sibling "&lt;name&gt;Undefined".</summary>
internal readonly record struct Figure
{
    private Figure(double? value, string? reason)
    {
        Value = value;
        Reason = reason;
    }

    public double? Value { get; }

    public string? Reason { get; }

    // Adding zero turns -0 into 0.
    public static Figure Of(double value) => new(value + 0.0, null);

    public static Figure Undefined(string reason) => new(null, reason);

    public static Figure Of(double? value, string? reason) => value is { } some ? Of(some) : Undefined(reason ?? "not computed");
}
