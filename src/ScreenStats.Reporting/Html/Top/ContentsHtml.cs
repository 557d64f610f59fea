using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Top;

/// <summary>What is in the report, and where.</summary>
internal static class ContentsHtml
{
    /// <summary>Writes the list.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        page.Open("nav", ("aria-labelledby", "contents")).Element("h2", "In this report", ("id", "contents")).Open("ul");
        foreach (var group in model.Groups)
        {
            page.Open("li").Element("a", group.Question, ("href", "#" + group.Id)).Open("ul");
            foreach (var section in group.Pages) page.Open("li").Element("a", section.Heading, ("href", "#" + section.Id)).Close();
            page.Close().Close();
        }

        page.Open("li").Element("a", MethodsHtml.Heading, ("href", "#" + MethodsHtml.Id)).Close();
        page.Open("li").Element("a", "Cautions", ("href", "#cautions")).Close();
        page.Close().Close();
    }
}
