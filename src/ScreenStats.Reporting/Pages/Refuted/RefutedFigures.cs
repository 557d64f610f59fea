using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Refuted;

/// <summary>Pictures of refuted positives.</summary>
internal static class RefutedFigures
{
    /// <summary>Refuted positives among valid tests by lot and by site; nothing where none was refuted or there is nothing to compare.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        if (findings.Disclosure is null && findings.Refuted.Program.RefutedRuns == 0) return [];
        var lots = findings.Lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).Select(lot => lot.Lot).ToHashSet(StringComparer.Ordinal);
        var sites = findings.Sites.Where(site => site.Flag.HasFlag(Flag.Refuted)).Select(site => site.Site).ToHashSet(StringComparer.Ordinal);
        return [.. Of(findings, Grouping.Lot, "lot", "lots", lots), .. Of(findings, Grouping.Site, "site", "sites", sites)];
    }

    private static IEnumerable<Chart> Of(Findings findings, Grouping grouping, string one, string many, HashSet<string> flagged)
    {
        var points = findings.Refuted.Groups.Where(row => row.Grouping == grouping)
            .SelectMany(row => ChartPoints.Of(row.Rate, findings.Disclosure, row.Level, flagged: flagged.Contains(row.Level))).ToImmutableArray();
        if (points.Length < 2) yield break;
        var whole = findings.Disclosure?.Shows(findings.Refuted.Program.Rate, "Estimate") == false ? null : findings.Refuted.Program.Rate.Estimate;
        var highest = points.MaxBy(point => point.Estimate)!;
        string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
        yield return LevelChart.Of(
            new ChartFrame(
                "refuted-by-" + one,
                $"Refuted positives by {one}",
                Caption(findings, grouping, highest, whole) + $"Refuted positives among valid tests, by {one}.",
                $"Dots with limits for {many}; highest {ChartText.Name(highest.Name)} with {Print(highest.Estimate)}, limits {Print(highest.Lower)} to {Print(highest.Upper)}." +
                (whole is { } value ? $" Whole program: {Print(value)}." : ""),
                "refuted") { Quantity = "refuted positives among valid tests" },
            points, whole, many) with { Levels = one == "lot" ? ChartLevels.Lot : ChartLevels.Site };
    }

    // Which is highest would bound what is hidden.
    private static Caption Caption(Findings findings, Grouping grouping, ChartPoint highest, double? whole)
    {
        if (findings.Disclosure is not null) return "Only lines wholly to the right of the dashed line of the whole program stand out.";
        var row = findings.Refuted.Groups.First(one => one.Grouping == grouping && one.Level == highest.Name);
        var path = FigurePath.Row("refuted.groups", row.Key);
        return See.Highest(highest, row.Rate, path + ".rate", new(path + ".level", Cell.Text(row.Level), Unit.Text), whole is { } value ? (value, "refuted.program.rate.estimate") : null, "the whole program", known: Known(findings, grouping, row.Level));
    }

    // A site is judged without the runs of flagged lots: where those were its refuted positives, that is no chance.
    private static Sentence? Known(Findings findings, Grouping grouping, string level) => grouping != Grouping.Site || findings.Sites.FirstOrDefault(site => site.Site == level) is not { } site ? null
        : See.Without(FigurePath.Row("sites", level) + ".refutedTest", site.RefutedTest, site.Tests, "flagged lots", "refuted", "valid tests");
}
