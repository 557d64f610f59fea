namespace ScreenStats.Statistics.Trends.Interruptions;

/// <summary>The terms of an interrupted series, and where those of each change stand.</summary>
internal sealed class InterruptionTerms
{
    private readonly List<(string Name, Func<double, double> At, int Change)> terms = [];

    public InterruptionTerms(IReadOnlyList<Interruption> changes, InterruptionOptions options, double origin)
    {
        if (options.Trend) terms.Add(("growth per unit of time", time => time - origin, -1));
        for (var pair = 1; pair <= options.SeasonPairs; pair++)
        {
            var turn = 2 * Math.PI * pair / options.SeasonLength;
            terms.Add(("season, sine " + pair, time => Math.Sin(turn * time), -1));
            terms.Add(("season, cosine " + pair, time => Math.Cos(turn * time), -1));
        }

        for (var i = 0; i < changes.Count; i++)
        {
            var change = changes[i];
            var from = change.SlopeFrom ?? change.At;
            if (change.Level) terms.Add(("jump of change " + (i + 1), time => time >= change.At ? 1 : 0, i));
            if (change.Slope) terms.Add(("change of growth of change " + (i + 1), time => time >= change.At ? time - from : 0, i));
        }

        Trend = options.Trend ? 1 : null;
        Level = [.. changes.Select((change, i) => change.Level ? 1 + terms.FindIndex(term => term.Change == i) : (int?)null)];
        Slope = [.. changes.Select((change, i) => change.Slope ? 1 + terms.FindLastIndex(term => term.Change == i) : (int?)null)];
    }

    public int Count => terms.Count + 1;

    public IReadOnlyList<string> Names => ["constant", .. terms.Select(term => term.Name)];

    /// <summary>The place of the coefficient of the growth before all changes.</summary>
    public int? Trend { get; }

    /// <summary>The place of the coefficient of each change's jump.</summary>
    public IReadOnlyList<int?> Level { get; }

    /// <summary>The place of the coefficient of each change's new growth.</summary>
    public IReadOnlyList<int?> Slope { get; }

    /// <summary>The terms at a time without the constant.</summary>
    public double[] At(double time) => [.. terms.Select(term => term.At(time))];

    /// <summary>The terms at a time with the constant: all, those without the changes, and those of the changes alone.</summary>
    public (double[] All, double[] Unchanged, double[] Changes) Weights(double time)
    {
        double[] all = [1, .. At(time)];
        double[] unchanged = [1, .. terms.Select((term, j) => term.Change < 0 ? all[j + 1] : 0)];
        return (all, unchanged, [.. all.Zip(unchanged, (a, b) => a - b)]);
    }
}
