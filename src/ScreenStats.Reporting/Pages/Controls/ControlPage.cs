using ScreenStats.Evaluation;

namespace ScreenStats.Reporting.Pages.Controls;

/// <summary>What control swabs showed.</summary>
internal static class ControlPage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings) => new(
        "controls", "What control swabs showed", findings.Controls,
        "Control swabs are run when somebody decides to; they do not show how devices do on people.",
        "Runs of control swabs are kept out of all other figures. Observed against expected, by lot and by site.")
    {
        Tables = [.. findings.Controls.Tables.Select(TableViews.Whole)],
    };
}
