using System.Globalization;

namespace ScreenStats.Statistics.Shrinkage;

/// <summary>Events of one group against those that a reference leads to expect, for instance of a site by indirect standardisation.</summary>
public readonly record struct ObservedExpected
{
    /// <summary>Makes the pair.</summary>
    /// <param name="observed">Events, 0 or more.</param>
    /// <param name="expected">Events expected, finite, 0 or more; a group of which none are expected says nothing.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public ObservedExpected(long observed, double expected)
    {
        Guard.NotNegative(observed);
        if (!(expected >= 0) || !double.IsFinite(expected)) throw new ArgumentOutOfRangeException(nameof(expected), expected, "The expected events must be a finite number, 0 or more.");
        Observed = observed;
        Expected = expected;
    }

    /// <summary>Events.</summary>
    public long Observed { get; }

    /// <summary>Events expected.</summary>
    public double Expected { get; }

    /// <summary>Observed over expected; null where none are expected.</summary>
    public double? Ratio => Expected == 0 ? null : Observed / Expected;

    /// <summary>The pair, for debugging.</summary>
    /// <returns>Invariant text, for instance <c>9/1.4</c>.</returns>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Observed}/{Expected}");

    internal static UndefinedReason? ReasonOf(ObservedExpected[] used, IReadOnlyList<ObservedExpected> groups) =>
        used.Length == 0 || groups.Any(group => group.Expected == 0 && group.Observed > 0) ? UndefinedReason.NoEventsExpected
        : used.Length < 2 ? UndefinedReason.FewerThanTwoGroups
        : used.All(group => group.Observed == 0) ? UndefinedReason.NoEvents
        : null;
}
