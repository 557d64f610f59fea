using System.Collections.Immutable;

namespace ScreenStats.Statistics.LatentClass;

/// <summary>The posterior of prevalence and accuracy where no test is the truth, or undefined with the reason (see <see cref="LatentClassPosterior"/>).</summary>
public sealed record LatentPosterior
{
    internal LatentPosterior(double confidence, double divisions, UndefinedReason reason)
    {
        Confidence = confidence;
        Divisions = divisions;
        Reason = reason;
        Tests = [];
        InfectedByCell = [];
    }

    internal LatentPosterior(
        double confidence, double divisions, PosteriorSummary prevalence, ImmutableArray<TestPosterior> tests, ImmutableArray<PosteriorSummary> infectedByCell)
    {
        Confidence = confidence;
        Divisions = divisions;
        Prevalence = prevalence;
        Tests = tests;
        InfectedByCell = infectedByCell;
    }

    /// <summary>The probability between lower and upper, in (0, 1); the tails are equal.</summary>
    public double Confidence { get; }

    /// <summary>How many divisions of the counts into infected and uninfected there are, all of which were weighed.</summary>
    public double Divisions { get; }

    /// <summary>Of the prevalence; null where undefined.</summary>
    public PosteriorSummary? Prevalence { get; }

    /// <summary>Of each test, in the order of the counts; empty where undefined.</summary>
    public ImmutableArray<TestPosterior> Tests { get; }

    /// <summary>
    /// Of the number of truly infected people in each cell: positive, negative with one test; both positive, first only, second only, both
    /// negative with two. Empty where undefined.
    /// </summary>
    public ImmutableArray<PosteriorSummary> InfectedByCell { get; }

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; }

    /// <summary>Whether there are figures.</summary>
    public bool IsDefined => Reason is null;
}
