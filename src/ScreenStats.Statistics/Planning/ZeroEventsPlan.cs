using ScreenStats.Statistics.Clusters;

namespace ScreenStats.Statistics.Planning;

/// <summary>How many tests without an event rule out a rate.</summary>
public sealed record ZeroEventsPlan
{
    internal ZeroEventsPlan(double rate, double confidence, double designEffect, long? tests, double? achieved, double? upperLimit, double? confidenceWithOneFewer)
    {
        Rate = rate;
        Confidence = confidence;
        DesignEffect = designEffect;
        Tests = tests;
        Achieved = achieved;
        UpperLimit = upperLimit;
        ConfidenceWithOneFewer = confidenceWithOneFewer;
    }

    /// <summary>The rate to rule out.</summary>
    public double Rate { get; }

    /// <summary>The confidence asked for, one-sided.</summary>
    public double Confidence { get; }

    /// <summary>The design effect.</summary>
    public double DesignEffect { get; }

    /// <summary>The fewest tests; null where more than <see cref="SampleSize.Largest"/> would be needed.</summary>
    public long? Tests { get; }

    /// <summary>The confidence achieved: the chance of at least one event if the rate were the one to rule out; null without a number.</summary>
    public double? Achieved { get; }

    /// <summary>
    /// The one-sided upper limit of Clopper and Pearson at no event and the confidence asked for, at most the rate; null without a
    /// number, and for a confidence of one half or less.
    /// </summary>
    public double? UpperLimit { get; }

    /// <summary>The confidence with one test fewer, below the one asked for; null without a number, and where one test is enough.</summary>
    public double? ConfidenceWithOneFewer { get; }

    /// <summary>Why there is no number; null where there is one.</summary>
    public UndefinedReason? Reason => Tests is null ? UndefinedReason.NoSampleLargeEnough : null;
}
