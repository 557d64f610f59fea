using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>The figures of an option in one order, for limits of all of them.</summary>
internal static class OptionFigures
{
    public const int Count = 8;

    public static IEnumerable<double?> Values(CadenceOption option) =>
    [
        option.DetectionProbability.Value, option.InfectiousDaysRemoved.Value, option.FractionRemoved.Value, option.FalsePositivesPerPersonYear.Value,
        option.AnyFalsePositivePerYear.Value, option.TruePositivesPerYear.Value, option.FalsePositivesPerYear.Value, option.PositivePredictiveValue.Value,
    ];

    public static CadenceOption With(CadenceOption option, ImmutableArray<Interval?> limits, int first, double confidence) => option with
    {
        DetectionProbability = Limited(option.DetectionProbability, limits[first], confidence),
        InfectiousDaysRemoved = Limited(option.InfectiousDaysRemoved, limits[first + 1], confidence),
        FractionRemoved = Limited(option.FractionRemoved, limits[first + 2], confidence),
        FalsePositivesPerPersonYear = Limited(option.FalsePositivesPerPersonYear, limits[first + 3], confidence),
        AnyFalsePositivePerYear = Limited(option.AnyFalsePositivePerYear, limits[first + 4], confidence),
        TruePositivesPerYear = Limited(option.TruePositivesPerYear, limits[first + 5], confidence),
        FalsePositivesPerYear = Limited(option.FalsePositivesPerYear, limits[first + 6], confidence),
        PositivePredictiveValue = Limited(option.PositivePredictiveValue, limits[first + 7], confidence),
    };

    /// <summary>The figure with its limits; the figure alone where nothing it rests on is uncertain.</summary>
    public static Estimate Limited(Estimate figure, Interval? limits, double confidence) =>
        figure.Value is { } value && limits is { } range && range.Width > 1e-12 * Math.Abs(value) ? Estimate.Of(value, range, UncertainFigures.Method, confidence) : figure;
}
