using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.FollowThrough;

/// <summary>What became of the runs that called for a confirmatory test.</summary>
internal static class FollowUpPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "follow-up", "What became of positive and inconclusive runs", findings.FollowUp,
        "Nothing is known of a run without a conclusive result. It may be either; leaving it out is no answer.",
        "Each positive or inconclusive run is followed up by the first conclusive specimen of the same person within the hours that the program file allows. " +
        "With no conclusive one, an indeterminate or rejected one leaves it unresolved; with none it is pending while a report may still come, else unverified. Limits are of the share with a conclusive result.")
    {
        Charts = FollowUpFigures.Of(findings),
        Tables = [TableViews.Whole(findings.FollowUp.Table.Only(row => row.Grouping is Grouping.Program or Grouping.Site or Grouping.Lot))],
        Caution = "Unverified is not refuted: whoever has a positive or inconclusive run without a confirmatory result is treated as local rules say of a positive until there is one.",
    };
}
