using System.Collections.Immutable;
using ScreenStats.Cli.Parsing;
using ScreenStats.Cli.Results;
using ScreenStats.Cli.Terminal;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Cli.Commands;

/// <summary>What was asked of <c>predict</c>, and its answer.</summary>
internal sealed record PredictAnswer(ProbabilityFigure Sensitivity, ProbabilityFigure Specificity, ProbabilityFigure Prevalence, double Confidence)
{
    /// <summary>From 1 in 10,000 to a half, evenly spaced on a logarithmic scale.</summary>
    private static readonly ImmutableArray<double> CurvePrevalences = PredictiveCurve.Prevalences(0.0001, 0.5, 26);

    private static readonly Estimate Nothing = Estimate.Undefined(UndefinedReason.NoTrials);

    public long Per { get; init; } = 10_000;

    public double Share { get; init; } = 0.5;

    public int? Times { get; init; }

    public PositiveRule Rule { get; init; }

    public ProbabilityFigure? ConfirmatorySensitivity { get; init; }

    public ProbabilityFigure? ConfirmatorySpecificity { get; init; }

    public bool WithCurve { get; init; }

    private ScreenAccuracy? Screen => Accuracy(Sensitivity, Specificity);

    public PredictResult Result()
    {
        var screen = Screen;
        var prior = Prevalence.Statement;
        var expected = Expected(screen, prior);
        var share = EstimateResult.Of(screen is null ? Nothing : PredictiveValue.PrevalenceForPositiveShare(Share, screen.Sensitivity, screen.Specificity, Confidence));
        return new PredictResult(
            Of(Sensitivity), Of(Specificity), Of(Prevalence), Confidence,
            Predictive(screen, prior, PredictiveValue.Positive), Predictive(screen, prior, PredictiveValue.Negative),
            Ratio(screen, LikelihoodRatio.Positive), Ratio(screen, LikelihoodRatio.Negative),
            Per, expected[0], expected[1], expected[2], expected[3],
            new ShareResult(Share, share.Estimate, share.Lower, share.Upper),
            Matches(("sensitivity", Sensitivity), ("specificity", Specificity), ("prevalence", Prevalence),
                ("confirmatory-sensitivity", ConfirmatorySensitivity), ("confirmatory-specificity", ConfirmatorySpecificity)),
            Repeated(screen, prior), Confirmed(screen, prior), Curve(screen)) { Remark = Remark() };
    }

    /// <summary>The distributions that stand for values written with an interval.</summary>
    public static ImmutableArray<MatchedResult> Matches(params (string Name, ProbabilityFigure? Figure)[] figures) =>
    [
        .. figures.Select(one => (one.Name, one.Figure?.Statement?.Matched)).Where(one => one.Matched is not null)
            .Select(one => new MatchedResult(one.Name, one.Matched!.Value.Alpha, one.Matched.Value.Beta)),
    ];

    private string? Remark()
    {
        string?[] remarks =
        [
            Sensitivity.Value + Specificity.Value <= 1
                ? "sensitivity and specificity add up to 1 or less: a positive result makes the condition no more likely than it was; check that the two are not mixed up"
                : null,
            Sensitivity.AtAnEnd || Specificity.AtAnEnd || Prevalence.AtAnEnd
                ? "a count of 0, or of all, has no variance: for the limits half is added to it and to the other count beside it"
                : null,
        ];
        return remarks.Any(remark => remark is not null) ? string.Join("; ", remarks.OfType<string>()) : null;
    }

    private static ScreenAccuracy? Accuracy(ProbabilityFigure? sensitivity, ProbabilityFigure? specificity) =>
        sensitivity?.Statement is { } first && specificity?.Statement is { } second ? new ScreenAccuracy(first, second) : null;

    private static Figure Of(ProbabilityFigure figure) => Figure.Of(figure.Value, UndefinedReason.NoTrials.Describe());

    private SeriesResult? Repeated(ScreenAccuracy? screen, AccuracyStatement? prior) => Times is not { } times
        ? null
        : Series(times, Rule, screen is null ? null : SerialTesting.Repeated(screen, times, Rule), prior, Cautions.Repeated);

    private SeriesResult? Confirmed(ScreenAccuracy? screen, AccuracyStatement? prior)
    {
        if (ConfirmatorySensitivity is null) return null;
        var first = screen is not null && Times is { } times ? SerialTesting.Repeated(screen, times, Rule) : screen;
        var together = first is not null && Accuracy(ConfirmatorySensitivity, ConfirmatorySpecificity) is { } confirmatory
            ? SerialTesting.InARow([first, confirmatory], PositiveRule.All)
            : null;
        return Series(null, PositiveRule.All, together, prior, Cautions.Confirmed);
    }

    private SeriesResult Series(int? times, PositiveRule rule, ScreenAccuracy? together, AccuracyStatement? prior, string caution)
    {
        var expected = Expected(together, prior);
        var nothing = EstimateResult.Of(Nothing);
        return new SeriesResult(
            times, rule == PositiveRule.All ? "all" : "any",
            together is null ? nothing : EstimateResult.Of(together.Sensitivity, Confidence),
            together is null ? nothing : EstimateResult.Of(together.Specificity, Confidence),
            Predictive(together, prior, PredictiveValue.Positive), Predictive(together, prior, PredictiveValue.Negative),
            expected[0], expected[1], expected[2], expected[3], caution);
    }

    private IReadOnlyList<CurveResult>? Curve(ScreenAccuracy? screen)
    {
        if (!WithCurve) return null;
        if (screen is null) return [];
        return
        [
            .. PredictiveCurve.Of(screen.Sensitivity, screen.Specificity, CurvePrevalences, Confidence)
                .Select(point => new CurveResult(point.Prevalence, EstimateResult.Of(point.Positive), EstimateResult.Of(point.Negative))),
        ];
    }

    private EstimateResult Predictive(
        ScreenAccuracy? screen, AccuracyStatement? prior, Func<AccuracyStatement, AccuracyStatement, AccuracyStatement, double, Estimate> predict) =>
        EstimateResult.Of(screen is null || prior is null ? Nothing : predict(screen.Sensitivity, screen.Specificity, prior, Confidence));

    private EstimateResult Ratio(ScreenAccuracy? screen, Func<AccuracyStatement, AccuracyStatement, double, Estimate> ratio) =>
        EstimateResult.Of(screen is null ? Nothing : ratio(screen.Sensitivity, screen.Specificity, Confidence));

    /// <summary>True positives, false positives, false negatives, true negatives.</summary>
    private Figure[] Expected(ScreenAccuracy? screen, AccuracyStatement? prior)
    {
        var nothing = Figure.Undefined(UndefinedReason.NoTrials.Describe());
        if (screen is null || prior is null) return [nothing, nothing, nothing, nothing];
        var expected = new ExpectedResults(screen.Sensitivity.Value, screen.Specificity.Value, prior.Value, Per);
        return [Figure.Of(expected.TruePositives), Figure.Of(expected.FalsePositives), Figure.Of(expected.FalseNegatives), Figure.Of(expected.TrueNegatives)];
    }
}
