using System.Collections.Immutable;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>The tables of accuracy.</summary>
internal static class AccuracyTables
{
    /// <summary>The word of a measure.</summary>
    public static string Word(AccuracyMeasure measure) => measure switch
    {
        AccuracyMeasure.Sensitivity => "sensitivity",
        AccuracyMeasure.Specificity => "specificity",
        AccuracyMeasure.Prevalence => "prevalence",
        AccuracyMeasure.PositivePredictiveValue => "positive-predictive-value",
        AccuracyMeasure.NegativePredictiveValue => "negative-predictive-value",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a member of the enumeration."),
    };

    public static Table<AccuracyRow> Accuracy(ImmutableArray<AccuracyRow> rows) => new(
        "accuracy",
        "Accuracy of the screen against the confirmatory test",
        "From audits: each audited negative run stands for the negative runs of its sampling stratum, and the limits take the runs of one person together, or those of one site where "
        + "sites differ by more, with Student's quantile where there are fewer than 30. "
        + "One-sided limits: the figure is at least the lower one. No assumption: every run that was not verified may have been infected or not.",
        [
            LevelColumns.By<AccuracyRow>(row => row.Grouping),
            LevelColumns.Level<AccuracyRow>(row => row.Level),
            new("measure", "Measure", Unit.Text, "What is measured; prevalence is the share infected of the valid tests.", row => Cell.Text(row.Measure)),
            new("basis", "Basis", Unit.Text, "What the figure stands on.", row => Cell.Text(LevelNames.Of(row.Basis))),
            new("estimate", "Estimate", Unit.Proportion, "The figure; undefined where only limits or bounds are known.", row => Number(row, row.Figure.Estimate)),
            new("lower", "Lower", Unit.Proportion, "Lower limit, or least value that the counts allow.", row => Number(row, row.Figure.Lower)),
            new("upper", "Upper", Unit.Proportion, "Upper limit, or greatest value that the counts allow.", row => Number(row, row.Figure.Upper)),
            new("method", "Method", Unit.Text, "Method of the limits.", row => row.Figure.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of the limits; bounds have none but with their sampling error.", row => row.Figure.Confidence is { } confidence ? Cell.Number(confidence) : Cell.Empty),
            new("with_error_lower", "With sampling error, lower", Unit.Proportion, "Lower end of the interval for the figure wherever between its bounds it lies.", row => row.WithErrorLower is { } lower ? Cell.Number(lower) : Cell.Empty) { Method = ImbensManski.MethodName },
            new("with_error_upper", "With sampling error, upper", Unit.Proportion, "Upper end of that interval.", row => row.WithErrorUpper is { } upper ? Cell.Number(upper) : Cell.Empty) { Method = ImbensManski.MethodName },
            new("positives", "Positives", Unit.Count, "Positive runs.", row => Cell.Count(row.Positives)),
            new("verified", "Confirmed or refuted", Unit.Count, "Positive runs that were confirmed or refuted.", row => Cell.Count(row.Verified)),
            new("negatives", "Negatives", Unit.Count, "Negative runs of which the figure speaks.", row => Cell.Count(row.Negatives)),
            new("audited", "Audited", Unit.Count, "Negative runs that were audited with a conclusive result.", row => Cell.Count(row.Audited)),
            new("missed", "Missed", Unit.Count, "Audited negative runs whose confirmatory test was positive.", row => Cell.Count(row.Missed)),
            new("remark", "Remark", Unit.Text, "Few counts, and why there is no estimate.", Remark),
            new("clusters", "Clusters", Unit.Text, "What runs the limits take together: people, or sites where the variance over them is larger.", row => row.Cluster is { } cluster ? Cell.Text(LevelNames.Of(cluster)) : Cell.Empty),
            new("cluster_count", "Number of clusters", Unit.Count, "How many of these clusters there are.", row => row.Clusters is { } count ? Cell.Count(count) : Cell.Empty),
        ],
        rows);

    public static Table<StratumFinding> Strata(ImmutableArray<StratumFinding> rows) => new(
        "audit-strata",
        "Sampling strata of the audits",
        "Each audited negative run stands for so many negative runs of its stratum as the weight says.",
        [
            new("stratum", "Stratum", Unit.Text, "Name of the sampling stratum, (none) where none is recorded.", row => Cell.Text(row.Stratum)),
            new("known_by", "Known by", Unit.Text, "How its negative runs are known.", row => Cell.Text(LevelNames.Of(row.Origin))),
            new("negatives", "Negatives", Unit.Count, "Negative runs in it.", row => row.Negatives is { } negatives ? Cell.Count(negatives) : Cell.Undefined("nothing says which negative runs it holds")),
            new("audited", "Audited", Unit.Count, "Negative runs that were audited with a conclusive result.", row => Cell.Count(row.Audited)),
            new("missed", "Missed", Unit.Count, "Audited runs whose confirmatory test was positive.", row => Cell.Count(row.Missed)),
            new("agreed", "Agreed", Unit.Count, "Audited runs whose confirmatory test was negative.", row => Cell.Count(row.Agreed)),
            new("weight", "Weight", Unit.Ratio, "How many negative runs each audited one stands for.", row => Cell.NumberOr(row.Weight, row.Audited == 0 ? "none was audited" : "nothing says which negative runs it holds")) { Method = PersonRobustAccuracy.MethodName },
        ],
        rows);

    public static Table<ProvenFinding> Proven(ImmutableArray<ProvenFinding> rows) => new(
        "proven-specificity",
        "What the positivity alone proves",
        "Where the sensitivity is at least 1 - specificity, the specificity is at least 1 - positivity, with no confirmatory test at all; the limit takes the "
        + "greatest positivity that fits the counts.",
        [
            new("device", "Device", Unit.Text, "The device; empty for all valid tests together.", row => row.Device.Length == 0 ? Cell.Empty : Cell.Text(row.Device)),
            new("tests", "Valid tests", Unit.Count, "Negative and positive runs.", row => Cell.Count(row.ValidTests)),
            new("positives", "Positives", Unit.Count, "Positive runs.", row => Cell.Count(row.Positives)),
            new("specificity_at_least", "Specificity is at least", Unit.Proportion, "One-sided limit of the average specificity.", row => Cell.NumberOr(row.SpecificityLower, row.SpecificityLowerUndefined ?? "there are no valid tests")),
            new("method", "Method", Unit.Text, "Method of the limit.", _ => Cell.Text(SpecificityProof.MethodName)),
            new("confidence", "Confidence", Unit.Proportion, "Confidence of the limit, one-sided.", row => Cell.Number(row.Confidence)),
            new("design_effect", "Design effect", Unit.Ratio, "By which the limit is widened for clusters.", row => Cell.Number(row.DesignEffect)) { Method = MethodNames.DesignEffect },
            new("stated_specificity", "Stated specificity", Unit.Proportion, "What is stated of the device.", row => row.StatedSpecificity is { } stated ? Cell.Number(stated) : Cell.Empty) { Method = MethodNames.Stated },
            new("stated_upper", "Its upper limit", Unit.Proportion, "Upper limit of what is stated; the value where it is taken as exact.", row => row.StatedUpper is { } stated ? Cell.Number(stated) : Cell.Empty) { Method = MethodNames.Stated },
            new("claim", "Claim", Unit.Text, "Whether the data refute what is stated.", row => Cell.Text(LevelNames.Of(row.Claim))),
        ],
        rows);

    private static Cell Number(AccuracyRow row, double? value) => Cell.NumberOr(value, row.Figure.EstimateUndefined ?? "nothing was counted");

    private static Cell Remark(AccuracyRow row)
    {
        if (row.Figure.Estimate is null) return row.Figure.Lower is null && row.Figure.EstimateUndefined is { } reason ? Cell.Text(reason) : Cell.Empty;
        return row.Missed < Clusters.ProportionFinding.FewBelow && row.Measure != "positive-predictive-value" ? Cell.Text("few counts") : Cell.Empty;
    }
}
