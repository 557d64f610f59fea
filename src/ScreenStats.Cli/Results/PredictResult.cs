using System.Collections.Immutable;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>predict</c> answers.</summary>
internal sealed record PredictResult(
    Figure Sensitivity,
    Figure Specificity,
    Figure Prevalence,
    double Confidence,
    Figure PositivePredictiveValue,
    Figure NegativePredictiveValue,
    Figure PositiveLikelihoodRatio,
    Figure NegativeLikelihoodRatio,
    ImmutableArray<IntervalItem> Intervals,
    PerTenThousand Per10000);
