using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Levels;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Yield;

/// <summary>Pictures of how much screening each case took. Left out where small counts are hidden, as their table is.</summary>
internal static class YieldFigures
{
    /// <summary>Runs for each case by site; nothing where no case was found or there is nothing to compare.</summary>
    public static ImmutableArray<Chart> Of(Findings findings)
    {
        var found = findings.Yield;
        var points = found.Sites.Select(site => site.RunsPerCase.WidenedLower is { } lower ? new QuotientPoint(site.Site, site.RunsPerCase.Found, site.RunsPerCase.Estimate, lower, site.RunsPerCase.WidenedUpper) : null)
            .OfType<QuotientPoint>().ToImmutableArray();
        if (findings.Disclosure is not null || points.Length < 2 || found.RunsPerCase is not { Estimate: { } whole, WidenedLower: not null, WidenedUpper: not null }) return [];
        var (above, below, none) = (points.Count(point => point.Lower > whole), points.Count(point => point.Upper < whole), points.Count(point => point.Estimate is null));
        Caption caption = new Sentence(
            "A case took {0} runs in the whole program (limits {1} to {2}).",
            Ratio("estimate", found.RunsPerCase.Estimate), Ratio("widenedLower", found.RunsPerCase.WidenedLower), Ratio("widenedUpper", found.RunsPerCase.WidenedUpper));
        caption += above + below == 0
            ? new Sentence("The limits of all {0} sites reach that: no difference to act on.", Caption.Drawn(points.Length))
            : new Sentence("Of {0} sites {1} took more and {2} fewer, limits and all; some of many stand out by chance.", Caption.Drawn(points.Length), Caption.Drawn(above), Caption.Drawn(below));
        return
        [
            QuotientChart.Of(
                new ChartFrame(
                    "yield-by-site",
                    "Runs for each case found, by site",
                    caption,
                    $"Dots with limits for sites. Whole program: {Print(whole)}. Limits wholly above it: {Print(above)}; wholly below: {Print(below)}; without a case: {Print(none)}.",
                    found.SiteTable.Id),
                points, whole, ("case", "cases", "sites"), "runs for each case") with { Levels = ChartLevels.Site },
        ];
    }

    private static FigureReference Ratio(string name, double? value) => new("yield.runsPerCase." + name, Cell.NumberOr(value, "no case was found"), Unit.Ratio);

    private static string Print(double value) => Rounding.Print(Cell.Number(value), Unit.Ratio);

    private static string Print(int count) => Rounding.Print(Cell.Count(count), Unit.Count);
}
