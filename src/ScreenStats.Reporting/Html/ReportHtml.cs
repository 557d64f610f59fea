using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Assets;
using ScreenStats.Reporting.Pages;

namespace ScreenStats.Reporting.Html;

/// <summary>The report as one self-contained page: no script, nothing fetched from anywhere.</summary>
internal static class ReportHtml
{
    private const int MostDiagnostics = 60;

    /// <summary>The page.</summary>
    /// <param name="model">What it says.</param>
    /// <param name="pictures">The finished pictures by the id of their chart.</param>
    public static string Of(ReportModel model, IReadOnlyDictionary<string, string> pictures)
    {
        var page = new Markup();
        page.Trusted("<!DOCTYPE html>\n").Open("html", ("lang", "en"));
        Head(page, model);
        page.Open("body").Element("a", "Skip to the answers", ("href", "#answers"), ("class", "skip"));
        Top(page, model);
        page.Open("main");
        Answers(page, model);
        Contents(page, model);
        foreach (var group in model.Groups)
        {
            page.Open("section", ("aria-labelledby", group.Id)).Element("h2", group.Question, ("id", group.Id));
            foreach (var section in group.Pages) SectionHtml.Write(page, section, pictures);
            if (group.Id == "trust") Diagnostics(page, model);
            page.Close();
        }

        MethodsHtml.Write(page, model);
        Cautions(page, model);
        page.Close();
        Made(page, model);
        page.Close().Close();
        return page.ToString();
    }

    private static void Head(Markup page, ReportModel model)
    {
        var style = "\n" + Asset.Text("report.css");
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style)));
        page.Open("head").Void("meta", ("charset", "utf-8"));
        page.Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", $"default-src 'none'; style-src 'sha256-{hash}'; base-uri 'none'; form-action 'none'"));
        page.Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        page.Void("meta", ("name", "referrer"), ("content", "no-referrer"));
        page.Element("title", model.Title + ": screening report");
        page.Trusted("<style>").Trusted(style).Trusted("</style>\n").Close();
    }

    private static void Top(Markup page, ReportModel model)
    {
        var span = model.Findings.Span;
        page.Open("header").Element("h1", model.Title);
        page.Element("p", span is { FirstDay: { } first, LastDay: { } last }
            ? $"Screening from {Day(first)} to {Day(last)}" + (span.DataAsOf is { } asOf ? $", data as of {asOf.ToString(model.Findings.Disclosure is null ? "yyyy-MM-dd HH:mm" : "yyyy-MM-dd", CultureInfo.InvariantCulture)}." : ".")
            : "No run was counted.", ("class", "span"));
        if (model.Findings.Settings.Report.SuppressBelow <= 1)
        {
            page.Element("p", "This report holds small counts and is not for circulation.", ("class", "notice"));
        }

        if (model.Findings.Disclosure is { } disclosure) page.Element("p", Hidden(disclosure), ("class", "disclosure"));

        page.Close();
    }

    private static void Answers(Markup page, ReportModel model)
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

        page.Close();
    }

    private static void Contents(Markup page, ReportModel model)
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

    private static void Diagnostics(Markup page, ReportModel model)
    {
        var found = model.Inputs.Diagnostics;
        if (found.IsDefaultOrEmpty) return;
        page.Open("section").Element("h3", "What was found in the files", ("id", "diagnostics")).Open("ul");
        foreach (var diagnostic in found.Take(MostDiagnostics))
        {
            var where = DiagnosticPlaces.Text(diagnostic);
            var often = diagnostic.Occurrences > 1 ? string.Create(CultureInfo.InvariantCulture, $" ({diagnostic.Occurrences:N0} times)") : "";
            page.Open("li").Element("code", diagnostic.Code).Text($" {Word(diagnostic.Severity)}{(where.Length > 0 ? " in " + where : "")}: {diagnostic.Message}{often}").Close();
        }

        page.Close();
        if (found.Length > MostDiagnostics)
        {
            page.Element("p", string.Create(CultureInfo.InvariantCulture, $"The first {MostDiagnostics} of {found.Length:N0}; set-aside.csv lists every row that is not counted."), ("class", "note"));
        }

        page.Close();
    }

    private static void Cautions(Markup page, ReportModel model)
    {
        page.Open("section", ("aria-labelledby", "cautions")).Element("h2", "Cautions", ("id", "cautions")).Open("ul");
        foreach (var caution in model.Findings.Cautions.Items)
        {
            page.Trusted("<li>");
            SentenceHtml.Inline(page, caution.Sentence);
            page.Trusted("</li>\n");
        }

        page.Close().Close();
    }

    private static void Made(Markup page, ReportModel model)
    {
        page.Open("footer", ("class", "made"));
        page.Element("p", $"Made by ScreenStats {model.Version}" + (model.Inputs.Seed is { } seed ? string.Create(CultureInfo.InvariantCulture, $", seed {seed}") : "") + ".");
        if (!model.Inputs.Options.IsEmpty) page.Element("p", "Options: " + string.Join(", ", model.Inputs.Options.Select(option => $"{option.Key} {option.Value}")) + ".");
        if (!model.Inputs.Files.IsDefaultOrEmpty)
        {
            page.Element("p", "Read (SHA-256 of each file):").Open("ul");
            foreach (var file in model.Inputs.Files) page.Open("li").Text(file.Name + " ").Element("code", file.Sha256).Close();
            page.Close();
        }

        page.Element("p", "Beside this page: findings.json (every figure), workbook.xlsx and tables/ (every table), plots/ (every picture), set-aside.csv (rows not counted), manifest.json.");
        page.Close();
    }

    private static string Hidden(ReleaseDisclosure disclosure)
    {
        var text = string.Create(CultureInfo.InvariantCulture,
            $"Small counts are hidden: those from 1 to {disclosure.SuppressBelow - 1}, others that would give one away, and every figure drawn from them. {disclosure.HiddenCounts:N0} counts are hidden, {disclosure.HiddenCells:N0} cells of tables read \"hidden\", and {(disclosure.TablesLeftOut.Length == 1 ? "1 table is" : $"{disclosure.TablesLeftOut.Length} tables are")} left empty.");
        if (!disclosure.TablesLeftOut.IsEmpty) text += " Left empty: " + string.Join(", ", disclosure.TablesLeftOut) + ".";
        text += " For the whole program and its devices limits are widened for clusters in coarse steps, a little wider than the data ask for; those of sites, lots and weeks are not widened, and too narrow where the same people were tested again and again, because exact ones would tell of single people and weeks.";
        text += " That a lot or site is not flagged says that its refuted positives, or unusable runs, were fewer than would be flagged, also where their number is hidden.";
        if (!disclosure.ComparedWithEarlierRelease) text += " No earlier report of this program was taken into account: if readers have one, the difference between the two can give a hidden count away.";
        if (disclosure.ComparedWithEarlierRelease) text += " What an earlier release showed was taken into account.";
        if (disclosure.NotProtected > 0) text += string.Create(CultureInfo.InvariantCulture, $" {disclosure.NotProtected:N0} could not be protected: the earlier release gives them away.");
        if (disclosure.Risk is { SmallestGroupHidden: true, MeanRisk: { } average })
        {
            text += string.Create(CultureInfo.InvariantCulture,
                $" In the screening export itself some rows that agree in site, period and lot form a group of fewer than {disclosure.SuppressBelow:N0}; the mean risk of telling a row apart is {Rounding.Print(Cell.Number(average), Unit.Proportion)}.");
        }

        if (disclosure.Risk is { SmallestGroup: { } smallest, LargestRisk: { } largest, MeanRisk: { } mean })
        {
            text += string.Create(CultureInfo.InvariantCulture,
                $" In the screening export itself rows that agree in site, period and lot form groups of at least {smallest:N0}: the largest risk of telling a row apart is {Rounding.Print(Cell.Number(largest), Unit.Proportion)}, the mean {Rounding.Print(Cell.Number(mean), Unit.Proportion)}.");
        }

        return text;
    }

    private static string Name(Reader reader) => reader switch
    {
        Reader.Analyst => "the occupational-health analyst",
        Reader.Consultant => "the epidemiology consultant",
        _ => "the manager of the program",
    };

    private static string Word(Severity severity) => severity.ToString().ToLowerInvariant();

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
