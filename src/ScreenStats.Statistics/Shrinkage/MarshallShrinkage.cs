namespace ScreenStats.Statistics.Shrinkage;

/// <summary>Ratios of observed to expected drawn together by moments alone: no distribution is assumed, and no interval given.</summary>
public static class MarshallShrinkage
{
    /// <summary>Marshall's global estimator.</summary>
    /// <param name="groups">The groups; those of which no event is expected get the mean.</param>
    /// <returns>Mean, variance and ratios; a reason where fewer than two groups can be compared or nothing was seen.</returns>
    /// <exception cref="ArgumentNullException">No list.</exception>
    /// <remarks>
    /// m = ΣO / ΣE, s² = Σ E (O/E - m)² / ΣE, A = max(0, s² - m / Ē); each m + A / (A + m / E) (O/E - m). Source: Marshall RJ, Appl Stat
    /// 1991;40:283-294 (from memory).
    /// </remarks>
    public static MarshallFit Of(IReadOnlyList<ObservedExpected> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ObservedExpected[] used = [.. groups.Where(group => group.Expected > 0).OrderBy(group => group.Expected).ThenBy(group => group.Observed)];
        if (ObservedExpected.ReasonOf(used, groups) is { } reason) return new MarshallFit(used.Length, null, null, [], reason);
        double observed = used.Sum(group => group.Observed), expected = used.Sum(group => group.Expected);
        var mean = observed / expected;
        var spread = used.Sum(group => group.Expected * Math.Pow((group.Observed / group.Expected) - mean, 2)) / expected;
        var variance = Math.Max(0, spread - (mean / (expected / used.Length)));
        return new MarshallFit(
            used.Length, mean, variance, [.. groups.Select(group => group.Ratio is { } ratio ? mean + (variance / (variance + (mean / group.Expected)) * (ratio - mean)) : mean)], null);
    }
}
