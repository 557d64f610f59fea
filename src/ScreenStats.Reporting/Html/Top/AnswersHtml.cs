using ScreenStats.Evaluation.Answers;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html.Top;

/// <summary>The readers' questions, each with one sentence, for whom it is first, and the way to its section.</summary>
internal static class AnswersHtml
{
    /// <summary>Writes the answers.</summary>
    public static void Write(Markup page, ReportModel model)
    {
        page.Open("section", ("aria-labelledby", "answers")).Element("h2", "The answers", ("id", "answers"));
        page.Open("dl", ("class", "short"));
        foreach (var answer in model.Findings.Answers.Questions)
        {
            page.Trusted("<dt>").Trusted($"<a href=\"#{Markup.Escape(answer.Id)}\">").Text(answer.Question).Trusted("</a>");
            if (!answer.Readers.IsEmpty) page.Trusted(" <span class=\"for\">").Text("for " + string.Join(" and ", answer.Readers.Select(Name))).Trusted("</span>");
            page.Trusted("</dt>\n<dd>");
            SentenceHtml.Inline(page, answer.Brief);
            page.Trusted("</dd>\n");
        }

        page.Close().Close();
    }

    private static string Name(Reader reader) => reader switch
    {
        Reader.Analyst => "the analyst",
        Reader.Consultant => "the consultant",
        _ => "the manager",
    };
}
