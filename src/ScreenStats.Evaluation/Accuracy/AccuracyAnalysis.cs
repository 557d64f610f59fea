using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Expected;
using ScreenStats.Evaluation.Kits;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Positivity;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Statistics;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Clusters;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Evaluation.Accuracy;

/// <summary>Sensitivity, specificity, prevalence and predictive values of the screen in this program.</summary>
internal static class AccuracyAnalysis
{
    private const string NoAudit = "no negative run was verified by an audit with a conclusive result";

    /// <summary>Corrects the accuracy for the runs that were not verified, and says what the counts alone prove.</summary>
    /// <param name="tally">The tally.</param>
    /// <param name="settings">What the program file says.</param>
    /// <param name="positivity">Positivity.</param>
    /// <param name="kits">The devices side by side.</param>
    /// <param name="expected">What is stated of the devices.</param>
    /// <returns>The findings.</returns>
    /// <remarks>
    /// Only an audit verifies a negative run. Each audited run stands for the negative runs of its sampling stratum; the variance is the larger of the
    /// one over people and the one over sites where there are at least five (<see cref="PersonRobustAccuracy"/>). With fewer than 30 audited or none missed only a one-sided limit is given
    /// (<see cref="OneSidedAccuracy"/>, each person's runs as one); bounds without any assumption stand beside all of it, and alone for sites and lots.
    /// </remarks>
    public static AccuracyFindings Of(Tally tally, ProgramSettings settings, PositivityFindings positivity, KitFindings kits, ExpectedFindings expected)
    {
        var confidence = settings.Report.Confidence;
        var screens = tally.Cells.Screens;
        var program = Counts(RunCounts.Of(screens));
        var weights = tally.Cells.AuditStrata.IsEmpty ? null : AuditWeights.Of(tally.Cells, program.Negatives, settings.Audits);
        var rows = ImmutableArray.CreateBuilder<AccuracyRow>();
        var (figures, clustered) = Figures(weights, program, confidence);
        var counts = weights?.Counts.Overall ?? program;
        var basis = weights?.Basis ?? AccuracyBasis.None;
        var few = weights?.Sites?.People is { } sites and >= 2 and < WidenedInterval.FewestGroups ? sites : (long?)null;
        foreach (var (measure, figure) in figures)
        {
            var row = Row(Grouping.Program, "", measure, basis, figure, counts);
            rows.Add(clustered.TryGetValue(measure, out var estimate)
                ? row with { Cluster = estimate.GroupsDecide ? ClusterLevel.Sites : ClusterLevel.Persons, Clusters = estimate.Clusters, FewSites = few }
                : row);
        }

        var limits = weights is null ? null : OneSidedAccuracy.Lower(PersonRobustAccuracy.EffectivePeople(weights.Counts, weights.Products), confidence);
        var sensitivityLimit = new LimitFinding(limits?.Sensitivity, limits is null ? NoAudit : null, confidence);
        var specificityLimit = new LimitFinding(limits?.Specificity, limits is null ? NoAudit : null, confidence);
        if (limits is not null)
        {
            rows.Add(Row(Grouping.Program, "", AccuracyMeasure.Sensitivity, AccuracyBasis.OneSidedLimit, Limit(limits.Sensitivity, confidence), counts));
            rows.Add(Row(Grouping.Program, "", AccuracyMeasure.Specificity, AccuracyBasis.OneSidedLimit, Limit(limits.Specificity, confidence), counts));
        }

        var region = AddBounds(rows, Grouping.Program, "", program, confidence);
        foreach (var (site, runs) in RunCounts.By(screens, cell => cell.Site)) AddBounds(rows, Grouping.Site, site, Counts(runs), confidence);
        foreach (var (lot, runs) in RunCounts.By(screens, cell => cell.Lot)) AddBounds(rows, Grouping.Lot, lot, Counts(runs), confidence);

        var proven = ProvenAnalysis.Of(positivity.Program, kits, expected, confidence);
        var all = rows.ToImmutable();
        var strata = weights?.Strata ?? [];
        var findings = new AccuracyFindings(
            basis, counts.VerifiedNegatives, counts.Missed, program.Negatives, weights?.NegativesOutside ?? 0, strata,
            figures[AccuracyMeasure.Sensitivity], figures[AccuracyMeasure.Specificity], figures[AccuracyMeasure.Prevalence],
            figures[AccuracyMeasure.PositivePredictiveValue], figures[AccuracyMeasure.NegativePredictiveValue],
            sensitivityLimit, specificityLimit, Bounds(region, AccuracyMeasure.Sensitivity), Bounds(region, AccuracyMeasure.Specificity),
            Assumption(basis), proven, all, AccuracyTables.Accuracy(all), AccuracyTables.Strata(strata), AccuracyTables.Proven(proven), []);
        return findings with { Sentences = AccuracySentences.Of(findings) };
    }

    private static string Assumption(AccuracyBasis basis) =>
        (basis == AccuracyBasis.Reweighted
            ? "the audited negative runs are a random sample of the negative runs of their stratum"
            : "the audited negative runs are a random sample of all negative runs")
        + ", and the verified positive runs of all positive runs";

    private static VerificationCounts Counts(RunCounts runs) => new(
        runs[Outcome.Positive], runs.Confirmed, runs.Refuted, runs[Outcome.Negative],
        runs[Outcome.Negative, FollowUp.Missed], runs[Outcome.Negative, FollowUp.Agreed]);

    private static (SortedDictionary<AccuracyMeasure, EstimateFinding> Figures, Dictionary<AccuracyMeasure, ClusteredAccuracyEstimate> Clustered) Figures(
        AuditWeights? weights, VerificationCounts program, double confidence)
    {
        var figures = new SortedDictionary<AccuracyMeasure, EstimateFinding>();
        var clustered = new Dictionary<AccuracyMeasure, ClusteredAccuracyEstimate>();
        foreach (var measure in Enum.GetValues<AccuracyMeasure>())
        {
            if (weights is null)
            {
                figures.Add(measure, EstimateFinding.Undefined(NoAudit));
            }
            else if (measure != AccuracyMeasure.PositivePredictiveValue && OneSidedAccuracy.BoundsOnly(weights.Counts.Overall))
            {
                figures.Add(measure, EstimateFinding.Undefined(TooFew(weights.Counts.Overall)));
            }
            else
            {
                var estimate = PersonRobustAccuracy.Of(measure, weights.Counts, weights.Products, weights.Sites, confidence);
                figures.Add(measure, EstimateFinding.Of(estimate.Estimate));
                if (estimate.Estimate.Interval is not null) clustered.Add(measure, estimate);
            }
        }

        if (weights is null && program.VerifiedPositives == 0)
        {
            figures[AccuracyMeasure.PositivePredictiveValue] = EstimateFinding.Undefined(UndefinedReason.NoVerifiedPositives.Describe());
        }
        else if (weights is null)
        {
            figures[AccuracyMeasure.PositivePredictiveValue] = EstimateFinding.Undefined("without audits the observed predictive value stands for it");
        }

        return (figures, clustered);
    }

    private static string TooFew(VerificationCounts counts) => counts.VerifiedNegatives < OneSidedAccuracy.LeastAudited
        ? "fewer than 30 negative runs were audited with a conclusive result, so only a limit is given"
        : "none of the audited negative runs was missed, so only a limit is given";

    private static EstimateFinding Limit(double lower, double confidence) =>
        new(null, "a one-sided limit is no estimate", lower, 1, OneSidedAccuracy.MethodName, confidence);

    private static AccuracyRegion AddBounds(ImmutableArray<AccuracyRow>.Builder rows, Grouping by, string level, VerificationCounts counts, double confidence)
    {
        var region = AccuracyBounds.Of(counts, confidence);
        foreach (var measure in Enum.GetValues<AccuracyMeasure>())
        {
            var bounds = region[measure];
            var figure = bounds.Bounds is { } between
                ? new EstimateFinding(null, "with no assumption there are bounds, and no estimate", between.Lower, between.Upper, AccuracyBounds.MethodName, confidence)
                : EstimateFinding.Undefined(bounds.Reason!.Value.Describe());
            rows.Add(Row(by, level, measure, AccuracyBasis.NoAssumption, figure, counts) with
            {
                WithErrorLower = bounds.ConfidenceInterval?.Lower,
                WithErrorUpper = bounds.ConfidenceInterval?.Upper,
            });
        }

        return region;
    }

    private static BoundsFinding Bounds(AccuracyRegion region, AccuracyMeasure measure) =>
        new(region[measure].Bounds?.Lower, region[measure].Reason?.Describe(), region[measure].Bounds?.Upper);

    private static AccuracyRow Row(Grouping by, string level, AccuracyMeasure measure, AccuracyBasis basis, EstimateFinding figure, VerificationCounts counts)
    {
        var word = AccuracyTables.Word(measure);
        var part = by == Grouping.Program ? "" : $"{LevelNames.Of(by)}|{level}|";
        return new AccuracyRow(
            $"{part}{word}|{LevelNames.Of(basis)}", by, level, word, basis, figure, null, null,
            counts.Positives, counts.VerifiedPositives, counts.Negatives, counts.VerifiedNegatives, counts.Missed);
    }
}
