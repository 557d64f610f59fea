using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Commands;

/// <summary>The answer of <c>predict</c> for people.</summary>
internal static class PredictScreen
{
    public static void Render(PredictAnswer answer, PredictResult result, Screen screen)
    {
        screen.Title("What a result is worth");
        screen.Line($"sensitivity {answer.Sensitivity.Shown}, specificity {answer.Specificity.Shown}, prevalence {answer.Prevalence.Shown}");
        screen.Line();
        Measures(screen,
            ("positive-predictive-value", result.PositivePredictiveValue), ("negative-predictive-value", result.NegativePredictiveValue),
            ("positive-likelihood-ratio", result.PositiveLikelihoodRatio), ("negative-likelihood-ratio", result.NegativeLikelihoodRatio));
        if (result.Remark is { } remark) screen.Attention(remark);
        screen.Line();
        screen.Line($"Per {Show.Count(result.Per)} people tested once:");
        Counts(screen, result.TruePositives, result.FalsePositives, result.FalseNegatives, result.TrueNegatives);
        screen.Line();
        Share(screen, result.PrevalenceAtShare);
        if (result.Repeated is { Times: { } times } repeated)
            Series(screen, $"The same screen {times} times, positive where {(repeated.Rule == "all" ? "all are" : "any is")}:", result.Per, repeated);
        if (result.Confirmed is { } confirmed) Series(screen, $"{(result.Repeated is null ? "Screen" : "Repeated screen")} and confirmatory test, positive where both are:", result.Per, confirmed);
        if (result.Curve is { } curve) Curve(screen, curve);
        screen.Line();
        var figures = new[] { answer.Sensitivity, answer.Specificity, answer.Prevalence }.Concat(
            new[] { answer.ConfirmatorySensitivity, answer.ConfirmatorySpecificity }.OfType<Parsing.ProbabilityFigure>()).ToList();
        var exact = figures.All(one => one is { Value: not null, Counts: null, Limits: null });
        screen.Line(exact
            ? "No limits: every figure was taken as exact. Write counts such as 61/97, or 0.73[0.65,0.80], to carry their uncertainty."
            : $"Confidence {Show.Confidence(result.Confidence)}. Figures written as fractions are taken as exact.");
        Matched(screen, result.Matched);
        screen.Caution();
    }

    /// <summary>Says which distributions stand for values written with an interval.</summary>
    public static void Matched(Screen screen, IEnumerable<MatchedResult> matches)
    {
        foreach (var match in matches)
            screen.Line($"{match.Of} stands for the beta distribution with weights {Show.Number(match.Alpha)} and {Show.Number(match.Beta)}: mode and width as written.");
    }

    private static void Measures(Screen screen, params (string Name, EstimateResult Estimate)[] measures)
    {
        screen.Table(
            [new("measure"), new("estimate", true), new("lower", true), new("upper", true), new("method")],
            measures.Select(one => new[]
            {
                one.Name, Show.Number(one.Estimate.Estimate), Limit(one.Estimate.Lower), Limit(one.Estimate.Upper), one.Estimate.Method ?? "",
            }));
        foreach (var (name, estimate) in measures)
        {
            if (estimate.Estimate.Reason is { } why) screen.Line($"{name} is undefined: {why}");
        }
    }

    private static void Counts(Screen screen, Figure truePositives, Figure falsePositives, Figure falseNegatives, Figure trueNegatives) => screen.Table(
        [new(""), new("with the condition", true), new("without it", true)],
        [["positive", People(truePositives), People(falsePositives)], ["negative", People(falseNegatives), People(trueNegatives)]]);

    private static void Share(Screen screen, ShareResult share)
    {
        var limits = share.Lower.Value is null ? "" : $" ({Show.Number(share.Lower)} to {Show.Number(share.Upper)})";
        screen.Line(share.Estimate.Reason is { } why
            ? $"The prevalence at which a share of {Show.Number(share.Share)} of the positives is real is undefined: {why}"
            : $"A share of {Show.Number(share.Share)} of the positives is real at a prevalence of {Show.Number(share.Estimate)}{limits}.");
    }

    private static void Series(Screen screen, string title, long per, SeriesResult series)
    {
        screen.Line();
        screen.Line(title);
        Measures(screen,
            ("sensitivity", series.Sensitivity), ("specificity", series.Specificity),
            ("positive-predictive-value", series.PositivePredictiveValue), ("negative-predictive-value", series.NegativePredictiveValue));
        screen.Line($"Per {Show.Count(per)} people:");
        Counts(screen, series.TruePositives, series.FalsePositives, series.FalseNegatives, series.TrueNegatives);
        screen.Line(series.Caution);
    }

    private static void Curve(Screen screen, IReadOnlyList<CurveResult> curve)
    {
        screen.Line();
        screen.Line("Over prevalence:");
        screen.Table(
            [new("prevalence", true), new("positive", true), new("lower", true), new("upper", true), new("negative", true), new("lower", true), new("upper", true)],
            curve.Select(one => new[]
            {
                one.Prevalence.ToString("0.#####", System.Globalization.CultureInfo.InvariantCulture),
                Show.Number(one.PositivePredictiveValue.Estimate), Limit(one.PositivePredictiveValue.Lower), Limit(one.PositivePredictiveValue.Upper),
                Show.Number(one.NegativePredictiveValue.Estimate), Limit(one.NegativePredictiveValue.Lower), Limit(one.NegativePredictiveValue.Upper),
            }));
    }

    private static string Limit(Figure figure) => figure.Value is null ? "" : Show.Number(figure);

    private static string People(Figure figure) => Show.Rounded(figure, "#,0.0");
}
