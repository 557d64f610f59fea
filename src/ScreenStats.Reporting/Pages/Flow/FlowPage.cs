using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Flow;

/// <summary>The way of every row and run.</summary>
internal static class FlowPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "flow", "The way of every row and run", findings.Flow,
        "Who was never screened, and what a confirmatory test would have said of those who had none. A box counts runs, not people: one person may stand in it many times.",
        "Counts of the ledger, of runs by outcome, and of follow-up and audits, in the order in which one comes from the other; boxes that come from the same one add up to it. " +
        "Laid out as the reporting standard for diagnostic accuracy asks (P. M. Bossuyt et al., 2015, STARD 2015, BMJ 351:h5527, item 19). An audited negative run is missed where the confirmatory test was positive, agreed where it was negative.")
    {
        AtTop = FlowFigures.Of(findings),
        InsteadAtTop = FlowFigures.Instead(findings),
        Tables = [new TableView(findings.Flow.Table, "Boxes of the flow diagram", ["box", "count", "share", new ViewColumn("widened_lower", "Limits", "widened_upper"), "stage", "outcome", "from"])],
    };
}
