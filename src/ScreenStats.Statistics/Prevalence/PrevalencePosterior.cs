using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Prevalence;

/// <summary>What is known of prevalence, sensitivity and specificity after the counts, or undefined with the reason.</summary>
public sealed record PrevalencePosterior
{
    internal PrevalencePosterior(ProportionEstimate apparent, AccuracyPriors priors, double confidence)
    {
        Apparent = apparent;
        Priors = priors;
        Confidence = confidence;
    }

    /// <summary>The apparent prevalence: positives of tests, with Wilson's interval.</summary>
    public ProportionEstimate Apparent { get; }

    /// <summary>What was known before.</summary>
    public AccuracyPriors Priors { get; }

    /// <summary>The probability inside the intervals, in (0, 1).</summary>
    public double Confidence { get; }

    /// <summary>Of the prevalence; null where undefined.</summary>
    public PosteriorSummary? Prevalence { get; internal init; }

    /// <summary>Of the sensitivity; null where undefined or not asked for.</summary>
    public PosteriorSummary? Sensitivity { get; internal init; }

    /// <summary>Of the specificity; null where undefined or not asked for.</summary>
    public PosteriorSummary? Specificity { get; internal init; }

    /// <summary>Why it is undefined; null where it is defined.</summary>
    public UndefinedReason? Reason { get; internal init; }

    /// <summary>Whether there is a posterior.</summary>
    public bool IsDefined => Prevalence is not null;

    /// <summary>The prevalence as a plain estimate: mean and equal-tailed interval.</summary>
    /// <returns>The mean with its interval, or undefined with the reason.</returns>
    public Estimate ToEstimate() => Prevalence is { } prevalence
        ? Estimate.Of(prevalence.Mean, prevalence.EqualTailed.Including(prevalence.Mean), BayesianPrevalence.MethodName, Confidence)
        : Estimate.Undefined(Reason ?? UndefinedReason.NoTrials);
}
