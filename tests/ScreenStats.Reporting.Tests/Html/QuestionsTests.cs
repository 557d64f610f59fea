using System.Text;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Reporting.Html;
using ScreenStats.Reporting.Html.Top;
using ScreenStats.Reporting.Pages;
using ScreenStats.Reporting.Tests.Pages;

namespace ScreenStats.Reporting.Tests.Html;

/// <summary>The page answers first: a sentence for each question, then trust, then what to do, then a section for each question in the same words and order.</summary>
public class QuestionsTests
{
    /// <summary>Pages of which a reading could hurt somebody: one sent back to work, one not told, one blamed.</summary>
    private static readonly string[] Careful =
    [
        "predictive-value", "follow-up", "delays", "refuted", "expected", "retests", "stand-outs", "alarms", "lots", "lot-tests", "lot-recording", "bursts", "sites", "site-tests", "detection", "kits", "invalid-runs", "control-charts", "conduct",
        "repeats", "yield", "positivity", "true-prevalence", "accuracy", "audits", "interval-cases", "specimens", "compared", "trend", "cadence", "worth", "what-if-positive", "what-if-interval",
    ];

    /// <summary>Pages that say how the data are, and decide about nobody.</summary>
    private static readonly string[] OfTheData = ["ledger", "flow", "completeness", "persons", "participation", "coverage", "controls", "changes"];

    private static readonly (string Name, Findings Findings)[] All = [.. Programs.All, ("cadence", CadenceSketch.With(Programs.FaultyLot)), ("worth", WorthSketch.With(Programs.FaultyLot))];

    [Fact]
    public void Every_answer_is_one_sentence_of_at_most_45_words_that_leads_to_its_section()
    {
        foreach (var (name, findings) in All.Where(program => program.Name != "hostile").Append(("hidden", Hidden(Programs.FaultyLot))).Append(("published, hidden", Hidden(Programs.Published))))
        {
            var page = Page(findings);
            var answers = page.QuerySelectorAll("dl.short dt").Zip(page.QuerySelectorAll("dl.short dd")).ToArray();
            answers.Should().HaveCount(findings.Answers.Questions.Length, name);
            foreach (var (question, answer) in answers)
            {
                var (text, why) = (answer.TextContent, $"{name}: {question.TextContent}: {answer.TextContent}");
                Words(text).Should().BeLessThanOrEqualTo(45, why);
                text.Should().EndWith(".", why);
                text.Split(". ").Should().ContainSingle(why);
                var link = question.QuerySelector("a")!;
                var heading = page.GetElementById(link.GetAttribute("href")![1..])!;
                heading.LocalName.Should().Be("h2", why);
                heading.TextContent.Should().Be(link.TextContent, "the section has the words of the question");
                question.QuerySelector(".for")!.TextContent.Should().StartWith("for the ", why);
            }
        }
    }

    [Fact]
    public void The_sections_are_the_questions_in_their_order_and_each_begins_with_the_whole_answer()
    {
        foreach (var (name, findings) in All)
        {
            var groups = AllPages.Of(findings);
            groups.Select(group => group.Question).Should().Equal([.. findings.Answers.Questions.Select(answer => answer.Question), "How far can the data be trusted?"], name);
            var page = Page(findings);
            foreach (var answer in findings.Answers.Questions)
            {
                var first = page.GetElementById(answer.Id)!.NextElementSibling!;
                first.ClassName.Should().Be("answer", name);
                foreach (var sentence in answer.Sentences.Concat(answer.Conditions)) first.TextContent.Should().Contain(Seen(sentence.Text), name);
            }

            page.QuerySelectorAll(".answer").Should().HaveCount(findings.Answers.Questions.Length);
            page.QuerySelectorAll("nav > ul > li > a").Select(link => link.TextContent).Take(groups.Length).Should().Equal(groups.Select(group => group.Question));
        }
    }

    [Fact]
    public void Nothing_is_said_twice_at_the_top()
    {
        foreach (var (name, findings) in All.Where(program => program.Name != "hostile"))
        {
            var page = Page(findings);
            var said = page.QuerySelectorAll("#answers, #data, #next").Select(heading => heading.ParentElement!).SelectMany(part => part.QuerySelectorAll("dd, p, li")).Select(one => one.TextContent).ToArray();
            // What cannot be said may have one reason for two questions.
            said.Where(text => text.Any(char.IsAsciiDigit)).Should().OnlyHaveUniqueItems(name);
        }
    }

    [Fact]
    public void A_caution_stands_wherever_a_reading_could_hurt_somebody()
    {
        foreach (var (name, findings) in All)
        {
            var pages = AllPages.Of(findings).SelectMany(group => group.Pages).ToArray();
            pages.Select(page => page.Id).Except(Careful).Except(OfTheData).Should().BeEmpty("a new page says whether it needs a caution");
            var cautions = pages.Where(page => page.Caution.Length > 0).ToArray();
            Careful.Except(cautions.Select(page => page.Id)).Should().BeEmpty(name);
            cautions.Select(page => page.Caution).Should().OnlyHaveUniqueItems("the same words everywhere are read nowhere");
            cautions.Should().AllSatisfy(page => Words(page.Caution).Should().BeLessThanOrEqualTo(55, page.Id));
        }

        var next = Page(Programs.FaultyLot).GetElementById("next")!.ParentElement!;
        next.QuerySelector(".caution")!.TextContent.Should().Contain("its own confirmatory test").And.Contain("releases nobody from isolation").And.Contain("Local rules and licensed practice come first");
        next.QuerySelector(".caution")!.TextContent.Should().Be(NextStepsHtml.Caution);
    }

    [Fact]
    public void Every_section_is_read_in_the_same_order()
    {
        string[] order = ["lead", "caution", "figure", "table", "limits", "method"];
        foreach (var (name, findings) in All)
        {
            foreach (var section in Page(findings).QuerySelectorAll("main > section > section:not(.method)").Where(section => section.QuerySelector("#diagnostics, #rounding") is null))
            {
                // Parts under headings of their own have words, pictures and tables in this order each.
                var parts = new List<List<int>> { new() };
                foreach (var element in section.Children.Skip(1))
                {
                    if (element.LocalName == "h4") parts.Add([]);
                    var kind = element.ClassName switch
                    {
                        "lead" => "lead",
                        "caution" => "caution",
                        _ when element.LocalName == "figure" => "figure",
                        _ when element.QuerySelector("table") is not null => "table",
                        _ when element.TextContent.StartsWith("What this cannot tell.", StringComparison.Ordinal) => "limits",
                        _ when element.LocalName == "details" && element.QuerySelector("summary")!.TextContent == "How these figures were made" => "method",
                        _ => "",
                    };
                    if (kind.Length > 0) parts[^1].Add(Array.IndexOf(order, kind));
                }

                parts.Should().AllSatisfy(part => part.Should().BeInAscendingOrder($"{name}: {section.FirstElementChild!.TextContent}"));
                parts[^1].TakeLast(2).Should().Equal([4, 5], name);
            }
        }
    }

    [Fact]
    public void Each_picture_has_its_table_in_the_page()
    {
        foreach (var (name, findings) in All)
        {
            var page = Page(findings);
            foreach (var figure in page.QuerySelectorAll("figure"))
            {
                var link = figure.QuerySelectorAll("figcaption a").Select(one => one.GetAttribute("href")!).FirstOrDefault(one => one.StartsWith('#'));
                link.Should().NotBeNull($"{name}: {figure.Id} leads to its table");
                var place = page.GetElementById(link![1..])!;
                (place.QuerySelector("tbody tr") is not null).Should().BeTrue($"{name}: {figure.Id}");
            }
        }
    }

    private static int Words(string text) => text.Split([' ', '\u00A0'], StringSplitOptions.RemoveEmptyEntries).Count(word => word.Any(char.IsLetterOrDigit));

    // Characters that no document may hold stand as a sign.
    private static string Seen(string text) => new HtmlParser().ParseDocument(Markup.Escape(text)).Body!.TextContent;

    private static Findings Hidden(Findings findings) =>
        DisclosureControl.Apply(findings with { Settings = findings.Settings with { Report = findings.Settings.Report with { SuppressBelow = 5 } } });

    private static IDocument Page(Findings findings) => new HtmlParser().ParseDocument(Encoding.UTF8.GetString(Report.Files(findings, new ReportInputs())["report.html"]));
}
