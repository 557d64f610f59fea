namespace ScreenStats.Statistics.Regression;

/// <summary>Turns levels (a period, a kit) into terms of a model.</summary>
public static class Levels
{
    /// <summary>For each level one term that is 1 in its rows and else 0, but none for the level of reference.</summary>
    /// <param name="values">The level of each row.</param>
    /// <param name="reference">The level of reference; null takes the one first in ordinal order.</param>
    /// <returns>The levels with a term, in ordinal order, and the terms of each row in that order.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <exception cref="ArgumentException">A level of reference that no row has.</exception>
    public static (IReadOnlyList<string> Names, IReadOnlyList<IReadOnlyList<double>> Terms) Terms(IReadOnlyList<string> values, string? reference = null)
    {
        ArgumentNullException.ThrowIfNull(values);
        string[] levels = [.. values.Distinct().Order(StringComparer.Ordinal)];
        if (reference is not null && !levels.Contains(reference)) throw new ArgumentException("The level of reference must be that of a row.", nameof(reference));
        reference ??= levels.Length > 0 ? levels[0] : null;
        string[] names = [.. levels.Where(level => level != reference)];
        return (names, [.. values.Select(value => (IReadOnlyList<double>)Array.ConvertAll(names, name => name == value ? 1.0 : 0.0))]);
    }
}
