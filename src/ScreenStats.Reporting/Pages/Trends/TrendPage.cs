using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Trends;
using ScreenStats.Evaluation.Trends.Growth;

namespace ScreenStats.Reporting.Pages.Trends;

/// <summary>Positivity, unusable runs and predictive value over time.</summary>
internal static class TrendPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "trend", "Trend", findings.Trends,
        "Why it rises or falls: infection, who was tested, the device, a lot, how results were entered. That a rate changed after something was changed does not say that it changed because of it: other things changed at the same time. Growth of the weeks shown is no forecast.",
        "Each period with Wilson's limits, widened because the same people are tested again and again. The smooth is a level that wanders from period to period, by as much as the counts themselves call for, with the band that holds each period's rate; " +
        "growth is the part by which the odds grow each week, by a regression whose errors allow for weeks that go together. Changes of slope are looked for on the logit scale, and how many there are is decided by the counts. " +
        "The last period is never fitted while it may still get runs, nor is predictive value while positives wait for their result.")
    {
        Charts = TrendFigures.Of(findings),
        Tables = Tables(findings),
        Caution = "A rate that falls is no reason to let sick people come to work, nor to stop confirming positives: fewer of the infected may have been tested or found. Measures change by local rules, not by a line.",
    };

    private static ImmutableArray<TableView> Tables(Findings findings)
    {
        var found = findings.Trends;
        var views = ImmutableArray.CreateBuilder<TableView>();
        var program = found.GrowthTable.Only(row => row.Leads && row.By == Grouping.Program);
        views.Add(new(program, "Growth of the whole program", ["measure", "segment", "from", "to", "growth_per_week", new("lower", "Limits", "upper"), "direction"]));
        // Where a direction is hidden nothing may be picked by it.
        if (findings.Disclosure is null)
        {
            views.Add(new(program.Only(row => row.Direction == GrowthDirection.Rises), "Where it rose: days to double", ["measure", "segment", "from", "to", "doubling_days", new("doubling_lower", "Limits", "doubling_upper")]));
            views.Add(new(program.Only(row => row.Direction == GrowthDirection.Falls), "Where it fell: days to halve", ["measure", "segment", "from", "to", "halving_days", new("halving_lower", "Limits", "halving_upper")]));
        }

        views.Add(new(found.ChangeTable.Only(row => row.Leads), "What changed, and when",
            ["on", "measure", "kind", new("on_lower", "Earliest to latest", "on_upper"), "what", "sites", new("level_ratio", "Level after, times before"), new("level_lower", "Limits", "level_upper"), "slope_before", "slope_after", "p_value"]));
        views.Add(new(found.GrowthTable.Only(row => row.Leads && row.By != Grouping.Program && row.Segment == GrowthSegment.RecentEightWeeks), "Growth by site, last eight complete weeks",
            [ViewColumn.Part, "measure", "growth_per_week", new("lower", "Limits", "upper"), "direction"]) { Folded = true });
        foreach (var measure in Enum.GetValues<TrendMeasure>())
        {
            var rows = found.PointTable.Only(row => row.Leads && row.Measure == measure);
            var cut = rows.RowCount > TableView.FirstRows;
            views.Add(new(rows.Arranged(all => cut ? all.Reverse() : all), $"{TrendWording.Title(measure)} by period{(cut ? ", the last first" : "")}",
                ["period_start", "trials", "events", new("estimate", "Share"), ViewColumn.Limits, "smooth", new("smooth_lower", "Band", "smooth_upper"), "community", "pending", "complete"]) { Folded = true });
        }

        views.Add(new(found.WeekdayTable.Only(row => row.Leads && row.Measure == TrendMeasure.Positivity), "Positivity by day of the week",
            ["weekday", "trials", "events", new("estimate", "Share"), new("lower", "Limits", "upper"), new("odds_ratio", "Odds against the mean of the days"), new("ratio_lower", "Limits", "ratio_upper")]) { Folded = true });
        return views.ToImmutable();
    }
}
