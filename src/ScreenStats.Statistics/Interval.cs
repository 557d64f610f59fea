using System.Globalization;

namespace ScreenStats.Statistics;

/// <summary>A closed interval between two finite numbers, the lower one first.</summary>
public readonly record struct Interval
{
    /// <summary>Makes an interval.</summary>
    /// <param name="lower">The lower end, finite.</param>
    /// <param name="upper">The upper end, finite and not below <paramref name="lower"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is not finite, or the upper end lies below the lower one.</exception>
    public Interval(double lower, double upper)
    {
        if (!double.IsFinite(lower)) throw new ArgumentOutOfRangeException(nameof(lower), lower, "The lower end must be a finite number.");
        if (!double.IsFinite(upper)) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must be a finite number.");
        if (upper < lower) throw new ArgumentOutOfRangeException(nameof(upper), upper, "The upper end must not lie below the lower end.");
        Lower = lower;
        Upper = upper;
    }

    /// <summary>The lower end.</summary>
    public double Lower { get; }

    /// <summary>The upper end.</summary>
    public double Upper { get; }

    /// <summary>Upper minus lower end.</summary>
    public double Width => Upper - Lower;

    /// <summary>Whether a value lies in the interval, ends included.</summary>
    /// <param name="value">Any number.</param>
    /// <returns>True where it lies between the ends or on one of them.</returns>
    public bool Contains(double value) => value >= Lower && value <= Upper;

    /// <summary>Both ends, for debugging.</summary>
    /// <returns>Invariant text, for instance <c>[0.1, 0.2]</c>.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"[{Lower}, {Upper}]");

    /// <summary>The part of the interval that lies within two bounds; where none does, the nearer bound.</summary>
    internal Interval Clip(double lowest, double highest) =>
        new(Math.Clamp(Lower, lowest, highest), Math.Clamp(Upper, lowest, highest));

    /// <summary>The smallest interval that holds this one and a value.</summary>
    internal Interval Including(double value) => new(Math.Min(Lower, value), Math.Max(Upper, value));
}
