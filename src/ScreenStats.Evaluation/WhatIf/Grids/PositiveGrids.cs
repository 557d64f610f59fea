using System.Collections.Immutable;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Evaluation.WhatIf.Grids;

/// <summary>Grids of what a positive and a negative are worth, all filled by the functions of <see cref="Statistics.Accuracy"/>.</summary>
/// <remarks>
/// What a positive is worth hangs on prevalence, sensitivity and specificity, the latter two only through one figure, the likelihood ratio of a positive: two small
/// grids, one after the other, take the place of a huge one, as in the nomogram of T. J. Fagan, 1975, New England Journal of Medicine 293:257. Rare infection and
/// specificity near 1 need no special care, since both axes are logarithmic.
/// </remarks>
internal static class PositiveGrids
{
    /// <summary>People screened that the expected numbers are for.</summary>
    public const int People = 10_000;

    public const string Prevalence = "prevalence";
    public const string Sensitivity = "sensitivity";
    public const string Specificity = "specificity";
    public const string PositiveRatio = "likelihood-ratio-positive";
    public const string NegativeRatio = "likelihood-ratio-negative";

    public const double LowestPrevalence = 0.00001;
    public const double HighestPrevalence = 0.5;
    public const double LowestSensitivity = 0.2;
    public const double HighestSensitivity = 1;
    public const double LowestSpecificity = 0.8;
    public const double HighestSpecificity = 0.9999;

    private static readonly GridAxis Prevalences = new(Prevalence, GridScale.Logarithm, EvenlyByLogarithm(LowestPrevalence, HighestPrevalence, 73));
    private static readonly GridAxis CoarsePrevalences = new(Prevalence, GridScale.Linear, EvenlyByLogarithm(LowestPrevalence, HighestPrevalence, 37));
    private static readonly GridAxis FewPrevalences = new(Prevalence, GridScale.Linear, [LowestPrevalence, 0.125, 0.25, 0.375, HighestPrevalence]);
    private static readonly GridAxis Sensitivities = new(Sensitivity, GridScale.Linear, [LowestSensitivity, 0.4, 0.6, 0.8, HighestSensitivity]);
    private static readonly GridAxis FewSpecificities = new(Specificity, GridScale.Linear, [LowestSpecificity, 0.84, 0.88, 0.92, 0.96, HighestSpecificity]);
    private static readonly GridAxis Specificities = new(Specificity, GridScale.LogarithmOfRest,
        [.. EvenlyByLogarithm(1 - HighestSpecificity, 1 - LowestSpecificity, 52).Reverse().Select(rest => Grid.Kept(1 - rest))]);

    private static readonly GridAxis EvenSpecificities = Specificities with { Scale = GridScale.Linear };
    private static readonly GridAxis PositiveRatios = new(PositiveRatio, GridScale.Logarithm, [.. EvenlyByLogarithm(0.0001, 1, 62).Select(ratio => Grid.Kept(10_000 * ratio))]);

    private static readonly GridAxis NegativeRatios = new(NegativeRatio, GridScale.Linear,
        [0, 0.01, 0.02, 0.04, 0.07, 0.1, 0.14, 0.18, 0.22, 0.27, 0.33, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);

    /// <summary>All of them.</summary>
    public static ImmutableArray<Grid> All { get; } =
    [
        Grid.Of("true-positives", [CoarsePrevalences, Sensitivities], at => Among(at.Span[0], at.Span[1], LowestSpecificity).TruePositives),
        Grid.Of("missed", [CoarsePrevalences, Sensitivities], at => Among(at.Span[0], at.Span[1], LowestSpecificity).FalseNegatives),
        Grid.Of("false-positives", [FewPrevalences, EvenSpecificities], at => Among(at.Span[0], LowestSensitivity, at.Span[1]).FalsePositives),
        Grid.Of(PositiveRatio, [Sensitivities, Specificities], at => LikelihoodRatio.Positive(at.Span[0], at.Span[1]).Value!.Value),
        Grid.Of(NegativeRatio, [Sensitivities, FewSpecificities], at => LikelihoodRatio.Negative(at.Span[0], at.Span[1]).Value!.Value),
        Grid.Of("positive-predictive-value", [Prevalences, PositiveRatios], at => OfPositive(at.Span[0], at.Span[1])),
        Grid.Of("negative-predictive-value", [Prevalences, NegativeRatios], at => OfNegative(at.Span[0], at.Span[1])),
    ];

    private static ImmutableArray<double> EvenlyByLogarithm(double lowest, double highest, int nodes) => [.. PredictiveCurve.Prevalences(lowest, highest, nodes).Select(Grid.Kept)];

    private static ExpectedResults Among(double prevalence, double sensitivity, double specificity) => new(sensitivity, specificity, prevalence, People);

    // A pair of sensitivity and specificity that has the ratio: any other such pair gives the same.
    private static double OfPositive(double prevalence, double ratio) => PredictiveValue.Positive(0.5, 1 - (0.5 / ratio), prevalence).Value!.Value;

    private static double OfNegative(double prevalence, double ratio) => PredictiveValue.Negative(1 - (0.5 * ratio), 0.5, prevalence).Value!.Value;
}
