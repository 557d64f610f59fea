namespace ScreenStats.Statistics.Comparison;

/// <summary>A number, or why there is none.</summary>
internal readonly record struct Bound
{
    private Bound(double? value, UndefinedReason? reason)
    {
        Value = value;
        Reason = reason;
    }

    public double? Value { get; }

    public UndefinedReason? Reason { get; }

    public static implicit operator Bound(double value) => new(value, null);

    public static implicit operator Bound(UndefinedReason reason) => new(null, reason);
}
