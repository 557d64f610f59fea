using System.Globalization;

namespace ScreenStats.Statistics.Economics.Yield;

/// <summary>A price or a number of things: a value, or a value with a range.</summary>
public readonly record struct StatedAmount
{
    /// <summary>An amount known exactly.</summary>
    /// <param name="value">The value, from 0 to 1e15.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its domain.</exception>
    public StatedAmount(double value)
        : this(value, value, value)
    {
    }

    /// <summary>An amount with a range.</summary>
    /// <param name="value">The value, inside the range.</param>
    /// <param name="lower">The lower end, 0 or more.</param>
    /// <param name="upper">The upper end, at most 1e15.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public StatedAmount(double value, double lower, double upper)
    {
        Guard.Amount(value);
        Guard.Amount(lower);
        Guard.Amount(upper);
        if (lower > value) throw new ArgumentOutOfRangeException(nameof(lower), lower, "The lower end must not lie above the value.");
        if (upper < value) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the value.");
        Value = value;
        Lower = lower;
        Upper = upper;
    }

    /// <summary>The value.</summary>
    public double Value { get; }

    /// <summary>The lower end; the value itself where it is exact.</summary>
    public double Lower { get; }

    /// <summary>The upper end; the value itself where it is exact.</summary>
    public double Upper { get; }

    /// <summary>Whether there is no range.</summary>
    public bool IsExact => Lower == Upper;

    /// <summary>Value and range, for debugging.</summary>
    /// <returns>Invariant text.</returns>
    public override string ToString() => IsExact
        ? Value.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Value} [{Lower}, {Upper}]");
}
