using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages.Positivity;

/// <summary>Pictures of positivity.</summary>
internal static class PositivityFigures
{
    /// <summary>Positivity by period; nothing where fewer than two periods hold valid tests.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        var points = findings.Positivity.Periods
            .Where(row => row.PeriodStart is not null)
            .SelectMany(row => ChartPoints.Of(row.Share, findings.Disclosure, start: row.PeriodStart!.Value))
            .OrderBy(point => point.Start)
            .ToImmutableArray();
        if (points.Length < 2) return [];
        var (days, word) = findings.Span.Period switch
        {
            ReportPeriod.Day => (1, "day"),
            ReportPeriod.Month => (30, "month"),
            _ => (7, "week"),
        };
        var peak = points.MaxBy(point => point.Estimate)!;
        var whole = findings.Disclosure?.Shows(findings.Positivity.Program, "Estimate") == false ? null : findings.Positivity.Program.Estimate;
        string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
        string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return
        [
            PeriodChart.Of(
                new ChartFrame(
                    "positivity-by-period",
                    $"Positivity by {word}",
                    Caption(findings, peak, whole, word) + $"Positive tests among valid tests by {word}.",
                    $"Dots with limits for {points.Length} periods from {Day(points[0].Start)} to {Day(points[^1].Start)}. Highest in the {word} from {Day(peak.Start)}: " +
                    $"{Print(peak.Estimate)}, limits {Print(peak.Lower)} to {Print(peak.Upper)}." + (whole is { } value ? $" Whole span: {Print(value)}." : ""),
                    "positivity") { Quantity = "positivity" },
                points, whole, days),
        ];
    }

    // Which is highest would bound what is hidden.
    private static Caption Caption(Findings findings, ChartPoint highest, double? whole, string word)
    {
        if (findings.Disclosure is not null) return "Only lines that leave the dashed line of the whole span stand out: overlapping lines are no difference to act on.";
        var row = findings.Positivity.Periods.First(one => one.PeriodStart == highest.Start);
        var path = FigurePath.Row("positivity.periods", row.Key);
        return See.Highest(
            highest, row.Share, path + ".share", new(path + ".periodStart", Cell.Date(highest.Start), Unit.Date), whole is { } value ? (value, "positivity.program.estimate") : null, "the whole span", known: Known(findings))
            + (word == "day" ? "" : $"A {word} is named by its first day.");
    }

    // The false positives of a flagged lot lie where it was used, and need no chance.
    private static Sentence? Known(Findings findings) => findings.PredictiveValue.FlaggedLots is not { IsEmpty: false } lots ? null
        : lots.Length == 1
            ? new Sentence("That may be more infection, chance (the highest of several stands out easily), or flagged lot {0}, whose positives are among them.", new FigureReference(FigurePath.Row("predictiveValue.flaggedLots", lots[0]), Cell.Text(lots[0]), Unit.Text))
            : new Sentence("That may be more infection, chance (the highest of several stands out easily), or the flagged lots, whose positives are among them.");
}
