using System.Globalization;

namespace ScreenStats.Statistics.Trends.Series;

/// <summary>A figure whose limits may be open on one side or on both: an open end is null, with the reason.</summary>
/// <param name="Value">The figure; null where it has none.</param>
/// <param name="Lower">The lower limit; null where open.</param>
/// <param name="Upper">The upper limit; null where open.</param>
/// <param name="Method">What made it, in words.</param>
/// <param name="Confidence">The two-sided confidence of the limits, in (0, 1).</param>
/// <param name="Reason">Why there is no figure; null where there is one.</param>
/// <param name="LowerReason">Why the lower end is open; null where it is not.</param>
/// <param name="UpperReason">Why the upper end is open; null where it is not.</param>
public sealed record OpenEstimate(
    double? Value, double? Lower, double? Upper, string Method, double Confidence, UndefinedReason? Reason, UndefinedReason? LowerReason, UndefinedReason? UpperReason)
{
    /// <summary>Whether there is a figure with both limits.</summary>
    public bool IsClosed => Value is not null && Lower is not null && Upper is not null;

    /// <summary>The figure in one line, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{(Value is { } value ? value : "undefined")} [{(Lower is { } lower ? lower : "open")}, {(Upper is { } upper ? upper : "open")}] ({Method})");

    internal static OpenEstimate Closed(double value, double lower, double upper, string method, double confidence) => new(value, lower, upper, method, confidence, null, null, null);

    internal static OpenEstimate Undefined(UndefinedReason reason, string method, double confidence) => new(null, null, null, method, confidence, reason, reason, reason);

    internal static OpenEstimate WithoutLimits(double value, UndefinedReason reason, string method, double confidence) => new(value, null, null, method, confidence, null, reason, reason);

    /// <summary>The same through a function that rises.</summary>
    internal OpenEstimate Through(Func<double, double> rising) => this with
    {
        Value = Value is { } value ? rising(value) : null, Lower = Lower is { } lower ? rising(lower) : null, Upper = Upper is { } upper ? rising(upper) : null,
    };

    /// <summary>The same without what is too large for a number.</summary>
    internal OpenEstimate Finite() => this with
    {
        Value = Kept(Value), Reason = Reason ?? Lost(Value), Lower = Kept(Lower), LowerReason = LowerReason ?? Lost(Lower), Upper = Kept(Upper), UpperReason = UpperReason ?? Lost(Upper),
    };

    private static double? Kept(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    private static UndefinedReason? Lost(double? value) => value is { } number && !double.IsFinite(number) ? UndefinedReason.TooLarge : null;
}
