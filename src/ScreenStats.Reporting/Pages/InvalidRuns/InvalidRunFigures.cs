using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.InvalidRuns;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.InvalidRuns;

/// <summary>Pictures of unusable runs, by site and by lot.</summary>
internal static class InvalidRunFigures
{
    /// <summary>The pictures; nothing for a breakdown with fewer than two parts.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        var lots = findings.Lots.Where(lot => lot.Flag.HasFlag(Flag.Invalid)).Select(lot => lot.Lot).ToHashSet(StringComparer.Ordinal);
        var sites = findings.Sites.Where(site => site.Flag.HasFlag(Flag.Invalid)).Select(site => site.Site).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Of(findings, "site", "sites", findings.InvalidRuns.Sites, sites, findings.InvalidRuns.Program),
            .. Of(findings, "lot", "lots", findings.InvalidRuns.Lots, lots, findings.InvalidRuns.Program),
        ];
    }

    private static IEnumerable<Chart> Of(Findings findings, string one, string many, ImmutableArray<InvalidRunRow> rows, HashSet<string> flagged, ProportionFinding program)
    {
        var disclosure = findings.Disclosure;
        var points = rows.SelectMany(row => ChartPoints.Of(row.Share, disclosure, row.Level, flagged: flagged.Contains(row.Level))).ToImmutableArray();
        if (points.Length < 2) yield break;
        var whole = disclosure?.Shows(program, "Estimate") == false ? null : program.Estimate;
        var highest = points.MaxBy(point => point.Estimate)!;
        string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
        yield return LevelChart.Of(
            new ChartFrame(
                "invalid-runs-by-" + one,
                $"Unusable runs by {one}",
                Caption(findings, many, rows, highest, whole) + $"Inconclusive and invalid runs among all runs, by {one}.",
                $"Dots with limits for {many}; highest {ChartText.Name(highest.Name)} with {Print(highest.Estimate)}, limits {Print(highest.Lower)} to {Print(highest.Upper)}." +
                (whole is { } value ? $" Whole program: {Print(value)}." : "") +
                (flagged.Count > 0 ? $" Flagged: {string.Join(", ", flagged.Order(StringComparer.Ordinal).Take(5).Select(name => ChartText.Name(name)))}." : " None is flagged for it."),
                "invalid-runs") { Quantity = "unusable runs" },
            points, whole, many) with { Levels = one == "lot" ? ChartLevels.Lot : ChartLevels.Site };
    }

    // Which is highest would bound what is hidden.
    private static Caption Caption(Findings findings, string many, ImmutableArray<InvalidRunRow> rows, ChartPoint highest, double? whole)
    {
        if (findings.Disclosure is not null) return "Only lines wholly to the right of the dashed line of the whole program stand out.";
        var row = rows.First(one => one.Level == highest.Name);
        var path = FigurePath.Row("invalidRuns." + many, row.Key);
        return See.Highest(highest, row.Share, path + ".share", new(path + ".level", Cell.Text(row.Level), Unit.Text), whole is { } value ? (value, "invalidRuns.program.estimate") : null, "the whole program", known: Known(findings, many, row.Level));
    }

    // A lot is judged without the runs of flagged sites: where those were its unusable runs, that is no chance.
    private static Sentence? Known(Findings findings, string many, string level) => many != "lots" || findings.Lots.FirstOrDefault(lot => lot.Lot == level) is not { } lot ? null
        : See.Without(FigurePath.Row("lots", level) + ".invalidTest", lot.InvalidTest, lot.Runs, "flagged sites", "unusable", "runs");
}
