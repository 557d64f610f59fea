namespace ScreenStats.Statistics.Proportions;

/// <summary>Names of the methods for one proportion, as they stand in tables and on the command line.</summary>
public static class IntervalMethods
{
    /// <summary>All methods, in the order of the enumeration.</summary>
    public static IReadOnlyList<IntervalMethod> All { get; } =
    [
        IntervalMethod.Wilson, IntervalMethod.WilsonContinuity, IntervalMethod.ClopperPearson,
        IntervalMethod.AgrestiCoull, IntervalMethod.Jeffreys, IntervalMethod.MidP,
    ];

    /// <summary>The names of all methods, in the order of the enumeration.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        IntervalMethod.Wilson.Name(), IntervalMethod.WilsonContinuity.Name(), IntervalMethod.ClopperPearson.Name(),
        IntervalMethod.AgrestiCoull.Name(), IntervalMethod.Jeffreys.Name(), IntervalMethod.MidP.Name(),
    ];

    /// <summary>The method's name.</summary>
    /// <param name="method">The method.</param>
    /// <returns>For instance <c>clopper-pearson</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a member of the enumeration.</exception>
    public static string Name(this IntervalMethod method) => method switch
    {
        IntervalMethod.Wilson => "wilson",
        IntervalMethod.WilsonContinuity => "wilson-continuity",
        IntervalMethod.ClopperPearson => "clopper-pearson",
        IntervalMethod.AgrestiCoull => "agresti-coull",
        IntervalMethod.Jeffreys => "jeffreys",
        IntervalMethod.MidP => "mid-p",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Not a method this library knows."),
    };

    /// <summary>Finds a method by its name.</summary>
    /// <param name="name">The name, in lower case, as <see cref="Name"/> gives it.</param>
    /// <param name="method">The method found.</param>
    /// <returns>Whether there is one.</returns>
    public static bool TryParse(string? name, out IntervalMethod method)
    {
        foreach (var candidate in All)
        {
            if (!string.Equals(candidate.Name(), name, StringComparison.Ordinal)) continue;
            method = candidate;
            return true;
        }

        method = default;
        return false;
    }
}
