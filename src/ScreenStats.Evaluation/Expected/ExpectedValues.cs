using System.Collections.Immutable;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Evaluation.Expected;

/// <summary>Expected predictive values of one device: at the external prevalence, and over prevalence.</summary>
internal sealed class ExpectedValues(
    AccuracyStatement? sensitivity, AccuracyStatement? specificity, PrevalenceSettings? prevalence, double confidence)
{
    public const string NotStated = "the program file does not state both sensitivity and specificity of this device";
    public const double LowestPrevalence = 0.0001;
    public const double HighestPrevalence = 0.5;
    public const int Points = 75;

    public EstimateFinding Positive(bool withPrevalence) => At(PredictiveValue.Positive, withPrevalence);

    public EstimateFinding Negative(bool withPrevalence) => At(PredictiveValue.Negative, withPrevalence);

    /// <summary>Points evenly spaced on the logarithm of prevalence, from 0.01 % to 50 %.</summary>
    public ImmutableArray<CurvePoint> Curve()
    {
        if (sensitivity is null || specificity is null) return [];
        var points = ImmutableArray.CreateBuilder<CurvePoint>(Points);
        for (var index = 0; index < Points; index++)
        {
            var at = index == Points - 1
                ? HighestPrevalence
                : LowestPrevalence * Math.Pow(HighestPrevalence / LowestPrevalence, (double)index / (Points - 1));
            var positive = PredictiveValue.Positive(sensitivity, specificity, at, confidence);
            var negative = PredictiveValue.Negative(sensitivity, specificity, at, confidence);
            points.Add(new CurvePoint(
                at, positive.Value, positive.Lower ?? positive.Value, positive.Upper ?? positive.Value,
                negative.Value, negative.Lower ?? negative.Value, negative.Upper ?? negative.Value));
        }

        return points.ToImmutable();
    }

    /// <summary>Where the program stands on the curve: at the external prevalence, and at the one behind its own positivity.</summary>
    public ImmutableArray<ProgramPlace> Places(EstimateFinding corrected)
    {
        var places = ImmutableArray.CreateBuilder<ProgramPlace>();
        if (sensitivity is null || specificity is null) return [];
        if (prevalence is { Value: > 0 and < 1 } external) places.Add(Place("external", "external prevalence", external.Value, external.Source));
        if (corrected.Estimate is > 0 and < 1)
        {
            places.Add(Place("positivity", "prevalence behind this program's positivity", corrected.Estimate.Value, "observed positivity, corrected by the stated accuracy of the device"));
        }

        return places.ToImmutable();
    }

    private ProgramPlace Place(string id, string label, double at, string source) => new(
        id, label, at, source,
        EstimateFinding.Of(PredictiveValue.Positive(sensitivity!, specificity!, at, confidence)),
        EstimateFinding.Of(PredictiveValue.Negative(sensitivity!, specificity!, at, confidence)));

    private EstimateFinding At(Func<AccuracyStatement, AccuracyStatement, AccuracyStatement, double, Estimate> value, bool withPrevalence)
    {
        if (sensitivity is null || specificity is null) return EstimateFinding.Undefined(NotStated);
        if (prevalence is null) return EstimateFinding.Undefined("the program file states no external prevalence");
        var prior = withPrevalence ? prevalence.Statement() : AccuracyStatement.Exact(prevalence.Value);
        return EstimateFinding.Of(value(sensitivity, specificity, prior, confidence));
    }
}
