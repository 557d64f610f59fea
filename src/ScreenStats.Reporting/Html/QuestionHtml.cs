using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Html.Top;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>One question as a section: the whole answer with its condition, then the analyses that it rests on.</summary>
internal static class QuestionHtml
{
    /// <summary>Writes the section.</summary>
    public static void Write(Markup page, PageGroup group, ReportModel model, IReadOnlyDictionary<string, string> pictures)
    {
        page.Open("section", ("aria-labelledby", group.Id)).Element("h2", group.Question, ("id", group.Id));
        ImmutableArray<Sentence> said = [];
        if (model.Findings.Answers.Questions.FirstOrDefault(answer => answer.Id == group.Id) is { } answer)
        {
            page.Open("div", ("class", "answer"));
            foreach (var sentence in answer.Sentences) SentenceHtml.Paragraph(page, [sentence], "said");
            SentenceHtml.Paragraph(page, answer.Conditions, "condition");
            page.Close();
            said = answer.Sentences;
        }

        // What the answer says the first analysis below it does not say again.
        for (var index = 0; index < group.Pages.Length; index++) SectionHtml.Write(page, group.Pages[index], model, pictures, index == 0 ? said : []);
        if (group.Id == TrustHtml.Group) DiagnosticsHtml.Write(page, model);
        page.Close();
    }
}
