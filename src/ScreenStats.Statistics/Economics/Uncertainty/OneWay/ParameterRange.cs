namespace ScreenStats.Statistics.Economics.Uncertainty.OneWay;

/// <summary>A parameter with its value and the ends it is set to in turn.</summary>
public readonly record struct ParameterRange
{
    /// <summary>Makes a range.</summary>
    /// <param name="value">The value while others are moved, finite and inside the range.</param>
    /// <param name="lower">The lower end, finite.</param>
    /// <param name="upper">The upper end, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure that is not finite, or a value outside the range.</exception>
    public ParameterRange(double value, double lower, double upper)
    {
        Guard.Finite(value);
        Guard.Finite(lower);
        Guard.Finite(upper);
        if (lower > value) throw new ArgumentOutOfRangeException(nameof(lower), lower, "The lower end must not lie above the value.");
        if (upper < value) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the value.");
        Value = value;
        Lower = lower;
        Upper = upper;
    }

    /// <summary>The value while others are moved.</summary>
    public double Value { get; }

    /// <summary>The lower end.</summary>
    public double Lower { get; }

    /// <summary>The upper end.</summary>
    public double Upper { get; }
}
