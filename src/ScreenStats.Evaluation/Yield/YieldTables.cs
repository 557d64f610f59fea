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
            new("estimate", "For each found", Unit.Ratio, "Done divided by found.", row => Cell.NumberOr(row.Estimate, row.EstimateUndefined ?? "")),
            new("lower", "Lower limit", Unit.Ratio, "Lower limit, not widened.", row => Cell.NumberOr(row.Lower, row.EstimateUndefined ?? "")),
            new("upper", "Upper limit", Unit.Ratio, "Upper limit, not widened.", row => Cell.NumberOr(row.Upper, row.EstimateUndefined ?? NothingFound)),
            new("method", "Method", Unit.Text, "Method of the proportion's limits.", row => row.Method is { } method ? Cell.Text(method) : Cell.Empty),
            new("confidence", "Confidence", Unit.Ratio, "Confidence of all limits of the row.", row => Cell.Number(row.Confidence)),
            new("widened_lower", "Lower, widened", Unit.Ratio, "Lower limit widened because tests come in clusters; empty where it cannot be widened.", row => row.WidenedLower is { } lower ? Cell.Number(lower) : Cell.Empty),
            new("widened_upper", "Upper, widened", Unit.Ratio, "Upper limit widened because tests come in clusters; empty where it cannot be widened.", row => row.WidenedUpper is { } upper ? Cell.Number(upper) : Cell.Empty),
            new("widened_method", "Method, widened", Unit.Text, "Method of the proportion's widened limits.", row => row.WidenedLower is null ? Cell.Empty : Cell.Text(Statistics.Clusters.WidenedInterval.MethodName)),
        ],
        rows);
}
