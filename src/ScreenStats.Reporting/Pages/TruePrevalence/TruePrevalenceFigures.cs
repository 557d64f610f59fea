using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.TruePrevalence;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages.TruePrevalence;

/// <summary>Pictures of the prevalence behind the positivity.</summary>
internal static class TruePrevalenceFigures
{
    /// <summary>Prevalence by period; nothing where fewer than two periods have one.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        var periods = findings.TruePrevalence.Periods.Where(period => period.Lead is { Estimate: not null, WidenedLower: not null, WidenedUpper: not null }).ToImmutableArray();
        if (periods.Length < 2) return [];
        var (days, word) = findings.Span.Period switch
        {
            ReportPeriod.Day => (1, "day"),
            ReportPeriod.Month => (30, "month"),
            _ => (7, "week"),
        };
        var points = periods.Select(Point).ToImmutableArray();
        var peak = points.MaxBy(point => point.Estimate)!;
        return
        [
            PeriodChart.Of(
                new ChartFrame(
                    "true-prevalence-by-period",
                    $"Prevalence behind the positivity by {word}",
                    (Caption)new Sentence(
                        "{0} of {1} lines begin above the axis: where one does not, the stated false positives alone may explain the positives.",
                        Caption.Drawn(points.Count(point => point.Lower > 0)), Caption.Drawn(points.Length))
                    + $"Share of valid tests done on infected people by {word}, by the stated accuracy of the devices.",
                    $"Dots with limits for {points.Length} periods from {Day(points[0].Start)} to {Day(points[^1].Start)}. Highest in the {word} from {Day(peak.Start)}: " +
                    $"{Print(peak.Estimate)}, limits {Print(peak.Lower)} to {Print(peak.Upper)}. At 0 in {findings.TruePrevalence.PeriodsAtZero.ToString(CultureInfo.InvariantCulture)} of {points.Length.ToString(CultureInfo.InvariantCulture)}.",
                    findings.TruePrevalence.Table.Id),
                points, findings.TruePrevalence.Program.Lead.Estimate, days),
        ];
    }

    private static ChartPoint Point(TruePrevalenceFinding period) => new(
        period.Apparent.Trials, period.Lead.Estimate.GetValueOrDefault(), period.Lead.WidenedLower.GetValueOrDefault(), period.Lead.WidenedUpper.GetValueOrDefault(),
        Start: period.PeriodStart.GetValueOrDefault());

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
