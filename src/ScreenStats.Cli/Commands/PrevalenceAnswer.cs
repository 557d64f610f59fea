using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Cli.Commands;

/// <summary>What was asked of <c>prevalence</c>, and its answer.</summary>
internal sealed record PrevalenceAnswer(
    long Successes, long Trials, ProbabilityFigure Sensitivity, ProbabilityFigure Specificity, double Confidence, AccuracyPriors Priors, ExactMethod Exact)
{
    private const string BelowRemark =
        "There are fewer positives than the stated specificity alone would give: the stated specificity is not compatible with these data, or only by chance.";

    private const string AboveRemark =
        "There are more positives than the stated sensitivity can give: the stated accuracy is not compatible with these data.";

    private const string Uncertain = "counts, and counts matched to an interval, carry their uncertainty; an exact accuracy has none";

    /// <summary>What the method rogan-gladen does where the formula of its source would take a count to be without error.</summary>
    public const string HalfAdded = "a count of 0, or of all, has its variance at (x + 1/2)/(n + 1)";

    /// <summary>Whether a count is 0, or all of its trials.</summary>
    public bool AtAnEnd => Successes == 0 || Successes == Trials || Sensitivity.AtAnEnd || Specificity.AtAnEnd;

    public PrevalenceResult Result()
    {
        var apparent = EstimateResult.Of(ProportionInterval.Wilson(Successes, Trials, Confidence).ToEstimate());
        var noTrials = UndefinedReason.NoTrials.Describe();
        var matched = PredictAnswer.Matches(("sensitivity", Sensitivity), ("specificity", Specificity));
        var (se, sp) = (Figure.Of(Sensitivity.Value, noTrials), Figure.Of(Specificity.Value, noTrials));
        if (Sensitivity.Statement is not { } first || Specificity.Statement is not { } second)
        {
            return new PrevalenceResult(
                Successes, Trials, se, sp, Confidence, apparent,
                [.. new[] { RoganGladen.MethodName, LangReiczigel.MethodName, ExactPrevalence.MethodName, BayesianPrevalence.MethodName }.Select(name => Undefined(name, noTrials))],
                null, null, matched, null);
        }

        var plain = RoganGladen.Estimate(Successes, Trials, first, second, Confidence);
        var posterior = BayesianPrevalence.Estimate(Successes, Trials, first, second, Priors, Confidence);
        var exact = Of(ExactPrevalence.Estimate(Successes, Trials, first, second, Confidence, Exact), "sensitivity and specificity are taken as known, however they were written");
        return new PrevalenceResult(
            Successes, Trials, se, sp, Confidence, apparent,
            [
                Of(plain, AtAnEnd ? Uncertain + "; " + HalfAdded : Uncertain),
                Of(LangReiczigel.Estimate(Successes, Trials, first, second, Confidence), Uncertain),
                exact with { Interval = exact.Estimate.Value is null ? null : Exact == ExactMethod.Blaker ? "blaker" : "clopper-pearson" },
                Of(posterior),
            ],
            PosteriorResult.Of(posterior.Sensitivity), PosteriorResult.Of(posterior.Specificity), matched,
            plain.ApparentBelowFalsePositiveRate ? BelowRemark : plain.ApparentAboveSensitivity ? AboveRemark : null);
    }

    private static CorrectedResult Undefined(string method, string why) =>
        new(method, Figure.Undefined(why), Figure.Undefined(why), Figure.Undefined(why));

    private static CorrectedResult Of(CorrectedPrevalence corrected, string note)
    {
        var why = corrected.Reason?.Describe();
        return new(corrected.Method, Figure.Of(corrected.Value, why), Figure.Of(corrected.Lower, why), Figure.Of(corrected.Upper, why))
        {
            Unclipped = corrected.Unclipped, UnclippedLower = corrected.UnclippedInterval?.Lower, UnclippedUpper = corrected.UnclippedInterval?.Upper,
            StandardError = corrected.StandardError, AdjustedCentre = corrected.AdjustedCentre, Shift = corrected.Shift, Note = note,
        };
    }

    private static CorrectedResult Of(PrevalencePosterior posterior)
    {
        if (posterior.Prevalence is not { } known) return Undefined(BayesianPrevalence.MethodName, posterior.Reason?.Describe() ?? "");
        return new(BayesianPrevalence.MethodName, Figure.Of(known.Mean), Figure.Of(known.EqualTailed.Lower), Figure.Of(known.EqualTailed.Upper))
        {
            Mean = known.Mean, Median = known.Median, StandardDeviation = known.StandardDeviation,
            ShortestLower = known.Shortest.Lower, ShortestUpper = known.Shortest.Upper,
            Note = "exact posterior by quadrature from beta priors; counts and matched beta distributions add their weights, an exact accuracy stays as it is",
        };
    }
}
