using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.WhatIf;

/// <summary>What would be if prevalence, accuracy or the interval between screens were others.</summary>
internal static class WhatIfPages
{
    /// <summary>What a positive would be worth.</summary>
    public static Page Positive(Findings findings)
    {
        var whatIf = findings.WhatIf.Positive;
        return new Page(
            "what-if-positive", "What if prevalence, sensitivity or specificity were different", whatIf,
            "It speaks of expected numbers at exactly the values asked for, of one screen of each person, with results that are independent given infection. It has no limits: how uncertain the figures of this program are stands beside where the controls start, and a what-if shows what that does. Outside the ends of the controls nothing is shown.",
            "Computed by the library at the nodes of grids, which stand in findings.json; the page only looks up and interpolates, and is off by less than half of the last digit that it prints. Expected numbers and Bayes' theorem, from exact figures.")
        {
            WhatIf = WhatIfView.Of(
                "positive",
                [("prevalence", "Prevalence", WhatIfStops.Prevalence), ("sensitivity", "Sensitivity", WhatIfStops.Sensitivity), ("specificity", "Specificity", WhatIfStops.Specificity)],
                whatIf.Starts, whatIf.Sentences.Take(1), whatIf.Grids),
            Tables =
            [
                new TableView(whatIf.StartTable, "Where the controls start", ["name", "measure", new("share", "Figure") { Below = ("lower", "upper") }, "days", "source"]),
                new TableView(whatIf.OutcomeTable, "What a positive would be worth, by prevalence, sensitivity and specificity", [.. whatIf.OutcomeTable.Columns.Select(column => new ViewColumn(column.Name))]),
            ],
            Caution = "A screen is not a diagnosis: whatever a positive is worth on average, each one needs its own confirmatory test, and a negative rules nothing out. Local rules and licensed practice decide what follows.",
        };
    }

    /// <summary>What another interval would give.</summary>
    public static Page Interval(Findings findings)
    {
        var whatIf = findings.WhatIf.Interval;
        var ids = whatIf.Grids.SelectMany(grid => grid.Axes).Select(axis => axis.Id).ToHashSet(StringComparer.Ordinal);
        return new Page(
            "what-if-interval", "What if you screened more or less often", whatIf,
            "It speaks of one course of infection for everybody, of screens on every so many days and not on fixed weekdays, and of the assumptions of how often to screen at their central values. It has no limits, says nothing of infections averted inside, and does not say what is worth it: how often to screen does.",
            "Computed by the library at the nodes of grids, which stand in findings.json: each whole day is a node, and between sensitivities the page interpolates, off by less than half of the last digit that it prints.")
        {
            WhatIf = whatIf.AtStart is null ? null : WhatIfView.Of(
                "interval",
                [
                    .. new[] { (WhatIfStops.Days, "Days between screens", WhatIfStops.WholeDays), ("sensitivity", "Sensitivity", WhatIfStops.Sensitivity), ("specificity", "Specificity", WhatIfStops.Specificity) }
                        .Where(control => ids.Contains(control.Item1)),
                ],
                findings.WhatIf.Positive.Starts, whatIf.Sentences.Take(2), whatIf.Grids),
            Tables = whatIf.AtStart is null ? [] :
                [new TableView(whatIf.OutcomeTable, "What an interval between screens would give", [.. whatIf.OutcomeTable.Columns.Select(column => new ViewColumn(column.Name))])],
            Caution = "A screen is not a diagnosis, and no interval between screens takes all of the infectious time away: people with symptoms stay away whatever their last screen said. Local rules decide how often to screen.",
        };
    }
}
