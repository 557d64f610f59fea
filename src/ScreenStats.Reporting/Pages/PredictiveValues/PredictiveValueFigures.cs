using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Reporting.Charts.Levels;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.PredictiveValues;

/// <summary>Pictures of observed positive predictive values.</summary>
internal static class PredictiveValueFigures
{
    /// <summary>Observed positive predictive value by lot and by site, with what the runs without a conclusion leave possible; nothing where there is nothing to compare.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        var lots = findings.Lots.Where(lot => lot.Flag.HasFlag(Flag.Refuted)).Select(lot => lot.Lot).ToHashSet(StringComparer.Ordinal);
        var sites = findings.Sites.Where(site => site.Flag.HasFlag(Flag.Refuted)).Select(site => site.Site).ToHashSet(StringComparer.Ordinal);
        return [.. Of(findings, Grouping.Lot, "lot", "lots", lots), .. Of(findings, Grouping.Site, "site", "sites", sites)];
    }

    private static IEnumerable<Chart> Of(Findings findings, Grouping grouping, string one, string many, HashSet<string> flagged)
    {
        var found = findings.PredictiveValue;
        var rows = found.Groups.Where(row => row.Grouping == grouping && row.Basis == PredictiveValueBasis.Observed).ToArray();
        var points = rows.SelectMany(row => ChartPoints.Of(row.Value, findings.Disclosure, row.Level, flagged: flagged.Contains(row.Level)).Select(point =>
            new BoundedPoint(point, Seen(findings, row.Bounds, nameof(PredictiveValueBounds.Lower), row.Bounds.Lower), Seen(findings, row.Bounds, nameof(PredictiveValueBounds.Upper), row.Bounds.Upper)))).ToImmutableArray();
        if (points.Length < 2) yield break;
        var whole = findings.Disclosure?.Shows(found.Observed, "Estimate") == false ? null : found.Observed.Estimate;
        var lowest = Lowest(points);
        string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);
        yield return BoundedChart.Of(
            new ChartFrame(
                "predictive-value-by-" + one,
                $"What a positive was worth, by {one}",
                Caption(findings, rows, points, lowest, whole, many) + $"Confirmed among confirmed and refuted positive runs, by {one}." + (findings.Disclosure is null && rows.Any(row => row.Value.Estimate is null) ? $" {char.ToUpperInvariant(many[0])}{many[1..]} without a conclusive result are not drawn." : ""),
                $"Dots with limits for {many}; of those that rest on most, lowest {ChartText.Name(lowest.Point.Name)} with {Print(lowest.Point.Estimate)}, limits {Print(lowest.Point.Lower)} to {Print(lowest.Point.Upper)}" +
                (lowest is { BoundLower: { } from, BoundUpper: { } to } ? $", bounds {Print(from)} to {Print(to)}." : ".") + (whole is { } value ? $" Whole program: {Print(value)}." : "") +
                (points.Any(point => point.Point.Flagged) ? $" Flagged: {string.Join(", ", points.Where(point => point.Point.Flagged).Take(5).Select(point => ChartText.Name(point.Point.Name)))}." : ""),
                found.Table.Id),
            points, whole, many) with { Levels = one == "lot" ? ChartLevels.Lot : ChartLevels.Site };
    }

    private static double? Seen(Findings findings, PredictiveValueBounds bounds, string name, double? value) => findings.Disclosure?.Shows(bounds, name) == false ? null : value;

    // One of one is no finding: of those that rest on enough, where there are such.
    private static BoundedPoint Lowest(ImmutableArray<BoundedPoint> points) =>
        (points.Any(point => !point.Few) ? points.Where(point => !point.Few) : points).MinBy(point => (point.Point.Estimate, point.Point.Upper))!;

    // Which is lowest would bound what is hidden.
    private static Caption Caption(Findings findings, ObservedPredictiveValue[] rows, ImmutableArray<BoundedPoint> points, BoundedPoint lowest, double? whole, string many)
    {
        if (findings.Disclosure is not null) return "Only lines wholly to the left or right of the dashed line of the whole program stand out.";
        var row = rows.First(row => row.Level == lowest.Point.Name);
        var path = FigurePath.Row("predictiveValue.groups", row.Key);
        var among = points.Any(point => point.Few) && !lowest.Few ? $"Leaving out {many} with fewer than {BoundedPoint.FewBelow} conclusive results, " : "";
        return See.Lowest(among, lowest.Point, row.Value, path + ".value", new(path + ".level", Cell.Text(row.Level), Unit.Text), whole is { } value ? (value, "predictiveValue.observed.estimate") : null);
    }
}
