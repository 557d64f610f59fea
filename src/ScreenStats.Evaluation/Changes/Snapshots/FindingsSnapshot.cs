using System.Collections.Immutable;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Flagging;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends;

namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>Takes from findings what can be compared: the same as is read from their findings.json.</summary>
public static class FindingsSnapshot
{
    /// <summary>The snapshot of some findings with nothing hidden; where the program file hides small counts it says so.</summary>
    /// <param name="findings">The findings.</param>
    /// <returns>What can be compared.</returns>
    public static EvaluationSnapshot Of(Findings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return new EvaluationSnapshot
        {
            FirstDay = findings.Span.FirstDay,
            LastDay = findings.Span.LastDay,
            SuppressBelow = findings.Settings.Report.SuppressBelow > 1 ? findings.Settings.Report.SuppressBelow : 0,
            Shares = [.. Shares(findings)],
            Figures = [Figure(ChangeMeasure.Sensitivity, findings.Accuracy.Sensitivity), Figure(ChangeMeasure.Specificity, findings.Accuracy.Specificity)],
            Periods = Periods(findings.Trends),
            Levels = [.. findings.Sites.Select(site => Level(Grouping.Site, site)), .. findings.Lots.Select(lot => Level(Grouping.Lot, lot))],
            Settings = SnapshotSettings.Of(
                findings.Positivity.Program.Confidence, ReportPeriodName(findings.Span.Period), findings.Span.HasConfirmatory, findings.FollowUp.ConfirmWithinHours,
                findings.Span.ReportingLagFromData ? null : findings.Span.ReportingLagHours, findings.Yield.EpisodeDays, findings.Settings.Report.SuppressBelow,
                findings.Expected.Devices.Select(device => (device.Device, device.StatedSensitivity?.Value, device.StatedSpecificity?.Value))),
            Answers = Of(findings.Answers),
        };
    }

    /// <summary>The answers as they are read.</summary>
    internal static ImmutableArray<SnapshotAnswer> Of(AnswerFindings answers) =>
        [.. answers.Questions.Where(answer => answer.Id != ChangeAnswer.Id).Select(answer => new SnapshotAnswer(answer.Id, answer.Question, answer.Text))];

    private static IEnumerable<SnapshotShare> Shares(Findings findings)
    {
        var (positivity, value) = (findings.Positivity.Program, findings.PredictiveValue.Observed);
        yield return Share(Grouping.Program, "", ChangeMeasure.PositivePredictiveValue, value);
        yield return Share(Grouping.Program, "", ChangeMeasure.Positivity, positivity);
        yield return new SnapshotShare(Grouping.Program, "", ChangeMeasure.ConfirmedPerValidTest, value.Events, positivity.Trials, null, null);
        yield return Share(Grouping.Program, "", ChangeMeasure.RefutedPerValidTest, findings.Refuted.Program.Rate);
        yield return Share(Grouping.Program, "", ChangeMeasure.InvalidRuns, findings.InvalidRuns.Program);
        yield return Share(Grouping.Program, "", ChangeMeasure.FollowUp, findings.FollowUp.Positive.FollowThrough);
        yield return Share(Grouping.Program, "", ChangeMeasure.CasesPerPersonWeek, findings.Persons.Program.CaseShare);
        yield return Share(Grouping.Program, "", ChangeMeasure.NegativePredictiveValue, findings.Audits.Program.NegativePredictiveValue);
        if (findings.Coverage.Program is { } coverage)
            yield return new SnapshotShare(Grouping.Program, "", ChangeMeasure.Coverage, coverage.Persons, coverage.Eligible, null, null);
        var refuted = findings.Refuted.Groups.Where(row => row.Grouping is Grouping.Site or Grouping.Lot).ToList();
        foreach (var row in findings.Positivity.Sites.Concat(findings.Positivity.Lots)) yield return Share(row.Grouping, row.Level, ChangeMeasure.Positivity, row.Share);
        foreach (var row in refuted) yield return Share(row.Grouping, row.Level, ChangeMeasure.RefutedPerValidTest, row.Rate);
        foreach (var row in findings.InvalidRuns.Sites.Concat(findings.InvalidRuns.Lots)) yield return Share(row.Grouping, row.Level, ChangeMeasure.InvalidRuns, row.Share);
    }

    private static SnapshotShare Share(Grouping by, string level, ChangeMeasure measure, ProportionFinding share) =>
        new(by, level, measure, share.Events, share.Trials, share.DesignEffect, share.Clusters);

    private static SnapshotFigure Figure(ChangeMeasure measure, EstimateFinding figure) =>
        new(measure, figure.Estimate, figure.EstimateUndefined, figure.Lower, figure.Upper, figure.Confidence);

    private static SnapshotLevel Level(Grouping by, IJudgedLevel level) => new(by, level.Name, level.Flag);

    private static ImmutableArray<SnapshotPeriod> Periods(TrendFindings trends)
    {
        Dictionary<DateOnly, TrendRow> Of(TrendMeasure measure) => trends.Points
            .Where(row => row.Measure == measure && row.Basis == TrendBasis.All && row.By == Grouping.Program).ToDictionary(row => row.PeriodStart);
        var (unusable, confirmed) = (Of(TrendMeasure.InvalidRuns), Of(TrendMeasure.PredictiveValue));
        return
        [
            .. Of(TrendMeasure.Positivity).Values.OrderBy(row => row.PeriodStart).Select(row =>
            {
                var (runs, value) = (unusable.GetValueOrDefault(row.PeriodStart), confirmed.GetValueOrDefault(row.PeriodStart));
                return new SnapshotPeriod(row.PeriodStart, row.PeriodEnd, row.Trials, row.Events, runs?.Trials ?? 0, runs?.Events ?? 0, value?.Trials ?? 0, value?.Events ?? 0);
            }),
        ];
    }

    private static string ReportPeriodName(Counting.Cubes.ReportPeriod period) => period.ToString().ToLowerInvariant();
}
