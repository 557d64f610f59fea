using ScreenStats.Statistics;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Cli.Results;

/// <summary>One interval between screens: gain per infection, burden per person, and both for everybody.</summary>
internal sealed record CadenceItem(
    double EveryDays, Figure DetectionProbability, Figure InfectiousDaysRemoved, Figure FractionRemoved, double ScreensPerPersonYear,
    Figure FalsePositivesPerPersonYear, Figure AnyFalsePositivePerYear, Figure TruePositivesPerYear, Figure FalsePositivesPerYear, Figure PositivePredictiveValue)
{
    public static CadenceItem Of(CadenceOption option) => new(
        option.EveryDays, Given(option.DetectionProbability), Given(option.InfectiousDaysRemoved), Given(option.FractionRemoved), option.ScreensPerPersonYear,
        Given(option.FalsePositivesPerPersonYear), Given(option.AnyFalsePositivePerYear), Given(option.TruePositivesPerYear), Given(option.FalsePositivesPerYear),
        Given(option.PositivePredictiveValue));

    private static Figure Given(Estimate estimate) => Figure.Of(estimate.Value, estimate.Reason?.Describe());
}
