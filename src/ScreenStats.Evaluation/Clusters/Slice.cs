using ScreenStats.Counting.Cubes;

namespace ScreenStats.Evaluation.Clusters;

/// <summary>The counted runs of one part of the program, by outcome and in their clusters.</summary>
internal sealed class Slice(Grouping grouping, string level, DateOnly? periodStart)
{
    public Grouping Grouping { get; } = grouping;

    public string Level { get; } = level;

    public DateOnly? PeriodStart { get; } = periodStart;

    /// <summary>Trials: valid tests. Events: positives.</summary>
    public ClusterCounter Positivity { get; } = new();

    /// <summary>Trials: runs. Events: inconclusive and invalid runs.</summary>
    public ClusterCounter Unusable { get; } = new();

    public long Inconclusive { get; private set; }

    public long Invalid { get; private set; }

    /// <summary>What tells the slice from the others of its grouping.</summary>
    public string Key => PeriodStart is not { } start ? Level
        : Level.Length == 0 ? Day(start) : $"{Level}|{Day(start)}";

    public void Add(string site, DateOnly day, Outcome outcome, long runs)
    {
        var usable = outcome is Outcome.Negative or Outcome.Positive;
        if (usable) Positivity.Add(site, day, runs, outcome == Outcome.Positive ? runs : 0);
        if (outcome == Outcome.Inconclusive) Inconclusive += runs;
        if (outcome == Outcome.Invalid) Invalid += runs;
        Unusable.Add(site, day, runs, usable ? 0 : runs);
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
