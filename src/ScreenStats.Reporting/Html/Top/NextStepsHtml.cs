using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Top;

/// <summary>What to do next, ranked, with what must be known before anything is done.</summary>
internal static class NextStepsHtml
{
    /// <summary>What must be known before a step is taken.</summary>
    public const string Caution =
        "These steps are for whoever runs the program; none decides about a person. Each positive needs its own confirmatory test, also one of a flagged lot or site; a flag releases nobody from isolation. Local rules and licensed practice come first.";

    /// <summary>Writes the steps.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        var steps = model.Findings.Answers.NextSteps;
        if (steps.IsEmpty) return;
        page.Open("section", ("aria-labelledby", "next")).Element("h2", "What to do next", ("id", "next")).Open("ol");
        foreach (var step in steps.OrderBy(step => step.Rank)) SentenceHtml.Item(page, step.Sentence);
        page.Close().Element("p", Caution, ("class", "caution")).Close();
    }
}
