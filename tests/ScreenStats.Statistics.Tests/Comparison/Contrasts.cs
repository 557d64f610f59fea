using ScreenStats.Statistics.Comparison;

namespace ScreenStats.Statistics.Tests.Comparison;

/// <summary>Calls a measure and a method by their names.</summary>
internal static class Contrasts
{
    public static ContrastEstimate Of(string measure, string method, TwoProportions counts, double confidence = 0.95)
    {
        var chosen = ContrastMethods.Measures.Single(one => one.Name() == measure);
        return Of(chosen, ContrastMethods.Of(chosen).Single(one => one.Name() == method), counts, confidence);
    }

    public static ContrastEstimate Of(ContrastMeasure measure, ContrastMethod method, TwoProportions counts, double confidence = 0.95) => measure switch
    {
        ContrastMeasure.Difference => ProportionDifference.Of(method, counts, confidence),
        ContrastMeasure.Ratio => ProportionRatio.Of(method, counts, confidence),
        _ => OddsRatio.Of(method, counts, confidence),
    };
}
