using ScreenStats.Reporting.Html.Tables;
using ScreenStats.Reporting.Html.Top;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>The report as one self-contained page: nothing is fetched from anywhere. Here is the order of what stands on it.</summary>
internal static class ReportHtml
{
    /// <summary>The page.</summary>
    /// <param name="model">What it says.</param>
    /// <param name="pictures">The finished pictures by the id of their chart.</param>
    public static string Of(ReportModel model, IReadOnlyDictionary<string, string> pictures)
    {
        model = model with { Groups = TableAnchors.Of(TableRoom.Of(model.Groups)) };
        var page = new Markup();
        page.Trusted("<!DOCTYPE html>\n").Open("html", ("lang", "en"));
        HeadHtml.Write(page, model);
        page.Open("body").Element("a", "Skip to the answers", ("href", "#answers"), ("class", "skip"));
        TopHtml.Write(page, model);
        page.Open("main");
        AnswersHtml.Write(page, model);
        TrustHtml.Write(page, model, pictures);
        NextStepsHtml.Write(page, model);
        ContentsHtml.Write(page, model);
        foreach (var group in model.Groups) QuestionHtml.Write(page, group, model, pictures);
        MethodsHtml.Write(page, model);
        CautionsHtml.Write(page, model);
        page.Close();
        MadeHtml.Write(page, model);
        ScriptHtml.Write(page);
        page.Close().Close();
        return page.ToString();
    }
}
