using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Yield;

/// <summary>The table of yield.</summary>
internal static class YieldTables
{
    private const string NothingFound = "nothing was found, so there is no upper limit";

    public static Table<YieldFinding> Table(ImmutableArray<YieldFinding> rows) => new(
        "yield",
        "Screening done for each case found",
        "What was done divided by what was found. Limits are the reciprocals of the limits of found / done; where nothing was found only the lower limit stands.",
        [
            new("measure", "Measure", Unit.Text, "What for what.", row => Cell.Text(LevelNames.Of(row.Measure))),
            new("done", "Done", Unit.Count, "Runs, valid tests or people tested.", row => Cell.Count(row.Done)),
            new("found", "Found", Unit.Count, "Cases, confirmed runs or refuted runs.", row => Cell.Count(row.Found)),
            .. Quotient<YieldFinding>("For each found", "Done divided by found.", row => row),
        ],
        rows);

    public static Table<SiteYield> BySite(ImmutableArray<SiteYield> rows) => new(
        "yield-by-site",
        "Runs for each case found, by site",
        "Runs of the site divided by its cases. Limits are the reciprocals of the limits of cases / runs; where no case was found only the lower limit stands.",
        [
            new("site", "Site", Unit.Text, "Name of the site.", row => Cell.Text(row.Site)),
            new("runs", "Runs", Unit.Count, "Counted runs.", row => Cell.Count(row.RunsPerCase.Done)),
            new("cases", "Cases", Unit.Count, "Cases found there.", row => Cell.Count(row.RunsPerCase.Found)),
            .. Quotient<SiteYield>("Runs for each case", "Runs divided by cases.", row => row.RunsPerCase),
        ],
        rows);

    private static IEnumerable<Column<TRow>> Quotient<TRow>(string heading, string meaning, Func<TRow, YieldFinding> of) =>
    [
        new("estimate", heading, Unit.Ratio, meaning, row => Cell.NumberOr(of(row).Estimate, of(row).EstimateUndefined ?? "")),
        new("lower", "Lower limit", Unit.Ratio, "Lower limit, not widened.", row => Cell.NumberOr(of(row).Lower, of(row).EstimateUndefined ?? "")),
        new("upper", "Upper limit", Unit.Ratio, "Upper limit, not widened.", row => Cell.NumberOr(of(row).Upper, of(row).EstimateUndefined ?? NothingFound)),
        new("method", "Method", Unit.Text, "Method of the proportion's limits.", row => of(row).Method is { } method ? Cell.Text(method) : Cell.Empty),
        new("confidence", "Confidence", Unit.Ratio, "Confidence of all limits of the row.", row => Cell.Number(of(row).Confidence)),
        new("widened_lower", "Lower, widened", Unit.Ratio, "Lower limit widened because tests come in clusters; empty where it cannot be widened.", row => of(row).WidenedLower is { } lower ? Cell.Number(lower) : Cell.Empty),
        new("widened_upper", "Upper, widened", Unit.Ratio, "Upper limit widened because tests come in clusters; empty where it cannot be widened.", row => of(row).WidenedUpper is { } upper ? Cell.Number(upper) : Cell.Empty),
        new("widened_method", "Method, widened", Unit.Text, "Method of the proportion's widened limits.", row => of(row).WidenedLower is null ? Cell.Empty : Cell.Text(Statistics.Clusters.WidenedInterval.MethodName)),
    ];
}
