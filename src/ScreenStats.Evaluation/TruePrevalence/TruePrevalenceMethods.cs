using ScreenStats.Evaluation.Clusters;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Prevalence;

namespace ScreenStats.Evaluation.TruePrevalence;

/// <summary>
/// The methods by which a positivity is corrected, the one that leads first. The exact posterior is taken for the whole program only: it costs
/// about a tenth of a second, which for each site and week would be more than the whole evaluation.
/// </summary>
internal static class TruePrevalenceMethods
{
    private static readonly string[] Names = [LangReiczigel.MethodName, RoganGladen.MethodName];

    /// <summary>The true prevalence by each method. There is at least one test.</summary>
    public static IEnumerable<PrevalenceEstimate> Of(ProportionFinding apparent, AccuracyStatement sensitivity, AccuracyStatement specificity)
    {
        var effect = VarianceFactor.Of(apparent, apparent.Confidence);
        return [By(LangReiczigel.Estimate), By(RoganGladen.Estimate)];

        PrevalenceEstimate By(Func<long, long, AccuracyStatement, AccuracyStatement, double, double, CorrectedPrevalence> method)
        {
            var plain = method(apparent.Events, apparent.Trials, sensitivity, specificity, apparent.Confidence, 1);
            var widened = method(apparent.Events, apparent.Trials, sensitivity, specificity, apparent.Confidence, effect);
            return new PrevalenceEstimate(
                plain.Method, plain.Value, plain.Reason?.Describe(), plain.Lower, plain.Upper, apparent.Confidence, widened.Lower, widened.Upper, plain.Unclipped);
        }
    }

    /// <summary>The mean and the equal-tailed interval of the exact posterior with uniform priors. There is at least one test.</summary>
    public static PrevalenceEstimate Posterior(ProportionFinding apparent, AccuracyStatement sensitivity, AccuracyStatement specificity)
    {
        var effect = VarianceFactor.Of(apparent, apparent.Confidence);
        var (plain, widened) = (Estimate.Undefined(UndefinedReason.NoTrials), Estimate.Undefined(UndefinedReason.NoTrials));
        Parallel.Invoke(() => plain = By(1), () => widened = By(effect));
        return new PrevalenceEstimate(
            BayesianPrevalence.MethodName, plain.Value, plain.Reason?.Describe(), plain.Lower, plain.Upper, apparent.Confidence, widened.Lower, widened.Upper, null);

        Estimate By(double designEffect) => BayesianPrevalence.EstimatePrevalence(
            apparent.Events, apparent.Trials, sensitivity, specificity, null, apparent.Confidence, designEffect).ToEstimate();
    }

    /// <summary>Each method without a figure.</summary>
    public static IEnumerable<PrevalenceEstimate> Undefined(string reason, double confidence) =>
        Names.Select(name => new PrevalenceEstimate(name, null, reason, null, null, confidence, null, null, null));
}
