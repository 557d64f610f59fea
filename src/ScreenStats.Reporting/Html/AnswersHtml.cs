using ScreenStats.Evaluation.Answers;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>The answers to the readers' questions, what to do next, and how far the data can be trusted.</summary>
internal static class AnswersHtml
{
    /// <summary>Writes the answers.</summary>
    public static void Write(Markup page, ReportModel model, IReadOnlyDictionary<string, string> pictures)
    {
        var answers = model.Findings.Answers;
        page.Open("section", ("aria-labelledby", "answers")).Element("h2", "The answers", ("id", "answers"));
        page.Open("dl", ("class", "short"));
        foreach (var answer in answers.Questions)
        {
            page.Element("dt", answer.Question).Trusted("<dd>");
            foreach (var sentence in answer.InShort.IsEmpty ? answer.Sentences : answer.InShort)
            {
                SentenceHtml.Inline(page, sentence);
                page.Text(" ");
            }

            page.Trusted("</dd>\n");
        }

        page.Close();
        if (!answers.NextSteps.IsEmpty)
        {
            page.Element("h3", "What to do next").Open("ol");
            foreach (var step in answers.NextSteps.OrderBy(step => step.Rank))
            {
                page.Trusted("<li>");
                SentenceHtml.Inline(page, step.Sentence);
                page.Trusted("</li>\n");
            }

            page.Close();
        }

        foreach (var answer in answers.Questions)
        {
            page.Open("div", ("class", "answer")).Element("h3", answer.Question);
            if (!answer.Readers.IsEmpty) page.Element("p", "First for " + string.Join(" and ", answer.Readers.Select(Name)), ("class", "for"));
            foreach (var sentence in answer.Sentences) SentenceHtml.Paragraph(page, [sentence], "said");
            SentenceHtml.Paragraph(page, answer.Conditions, "condition");
            page.Close();
        }

        page.Element("h3", "How far the data can be trusted");
        SentenceHtml.Paragraph(page, model.Findings.All[0].Sentences.Take(1), "ledger");
        var called = model.Findings.Cautions.Items.Where(caution => caution.FromData && caution.Id != "small-counts").ToArray();
        if (called.Length > 0)
        {
            page.Open("ul");
            foreach (var caution in called)
            {
                page.Trusted("<li>");
                SentenceHtml.Inline(page, caution.Sentence);
                page.Trusted("</li>\n");
            }

            page.Close();
        }

        foreach (var section in model.Groups.SelectMany(group => group.Pages))
        {
            foreach (var chart in section.AtTop) FigureHtml.Write(page, chart, pictures, section.Id);
        }

        page.Close();
    }

    private static string Name(Reader reader) => reader switch
    {
        Reader.Analyst => "the occupational-health analyst",
        Reader.Consultant => "the epidemiology consultant",
        _ => "the manager of the program",
    };
}
