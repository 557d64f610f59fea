namespace ScreenStats.Statistics.Monitoring.Runs;

/// <summary>What runs and crossings say of a row of values.</summary>
public sealed record RunsAndCrossingsFinding
{
    internal RunsAndCrossingsFinding()
    {
    }

    /// <summary>How many values there were.</summary>
    public int Points { get; internal init; }

    /// <summary>The median, or the centre given.</summary>
    public double? Centre { get; internal init; }

    /// <summary>How many values were not on the centre.</summary>
    public int Useful { get; internal init; }

    /// <summary>How many of these were above.</summary>
    public int Above { get; internal init; }

    /// <summary>The longest run of useful points on one side.</summary>
    public int? LongestRun { get; internal init; }

    /// <summary>How often the line from one useful point to the next crosses the centre.</summary>
    public int? Crossings { get; internal init; }

    /// <summary>The longest run that is no signal.</summary>
    public int? LongestRunLimit { get; internal init; }

    /// <summary>The fewest crossings that are no signal.</summary>
    public int? CrossingsLimit { get; internal init; }

    /// <summary>The chances of a false signal; null where undefined or above <see cref="RunsAndCrossings.MostPoints"/> useful points.</summary>
    public RunChances? Chances { get; internal init; }

    /// <summary>Whether a run is too long.</summary>
    public bool LongRunSignal => LongestRun > LongestRunLimit;

    /// <summary>Whether the crossings are too few.</summary>
    public bool FewCrossingsSignal => Crossings < CrossingsLimit;

    /// <summary>Whether either is so.</summary>
    public bool Signal => LongRunSignal || FewCrossingsSignal;

    /// <summary>Why nothing can be said; null where something can.</summary>
    public UndefinedReason? Reason { get; internal init; }
}
