using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Testing;

namespace ScreenStats.Reporting.Tests.Html;

public class ReportHtmlTests
{
    private static readonly (string Name, string Page, IReadOnlyCollection<string> Files)[] Pages =
        [.. Programs.All.Select(program => (program.Name, Files: Report.Files(program.Findings, new ReportInputs()))).Select(report => (report.Name, Text(report.Files), (IReadOnlyCollection<string>)report.Files.Keys))];

    [Fact]
    public void The_page_is_well_formed_XML_too()
    {
        foreach (var (_, page, _) in Pages) XDocument.Parse(page[page.IndexOf('\n', StringComparison.Ordinal)..]).Root!.Name.LocalName.Should().Be("html");
    }

    [Fact]
    public void Nothing_runs_but_one_script_and_nothing_is_fetched()
    {
        foreach (var (name, page, files) in Pages)
        {
            var document = Parse(page);
            document.QuerySelectorAll("iframe, object, embed, link, img, form, base, foreignObject").Should().BeEmpty(name);
            document.QuerySelectorAll("script:not([type='application/json'])").Should().ContainSingle(name).Which.Attributes.Should().BeEmpty("it stands in the page");
            document.QuerySelectorAll("script[type='application/json']").Should().AllSatisfy(data => data.Attributes.Select(attribute => attribute.Name).Should().Equal("type"));
            document.QuerySelector("meta[http-equiv=Content-Security-Policy]")!.GetAttribute("content").Should().MatchRegex("^default-src 'none'; style-src 'sha256-[^ ;]+'; script-src 'sha256-[^ ;]+'; ");
            document.All.SelectMany(element => element.Attributes).Where(attribute => attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase) || attribute.Name == "style").Should().BeEmpty(name);
            foreach (var link in document.All.Attr("href").Concat(document.All.Attr("src")).Where(link => link is not null))
            {
                if (link!.StartsWith('#')) document.GetElementById(link[1..]).Should().NotBeNull($"{name}: {link}");
                else files.Should().Contain(link, name);
            }
        }
    }

    [Fact]
    public void The_policy_names_the_style_sheet_and_the_script_that_are_there()
    {
        var document = Parse(Pages[0].Page);
        var style = document.QuerySelector("style")!.TextContent;
        var script = document.QuerySelector("script:not([type])")!.TextContent;
        string Hash(string text) => Convert.ToBase64String(System.Security.Cryptography.SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        document.QuerySelector("meta[http-equiv=Content-Security-Policy]")!.GetAttribute("content").Should().Contain($"style-src 'sha256-{Hash(style)}'").And.Contain($"script-src 'sha256-{Hash(script)}'");
        style.Should().NotContain("@import");
        // The font is in the page: nothing is asked of any other place.
        System.Text.RegularExpressions.Regex.Matches(style, @"url\(([^)]{0,22})").Select(match => match.Groups[1].Value).Should().HaveCount(2).And.OnlyContain(url => url.StartsWith("data:font/woff2;base64", StringComparison.Ordinal));
        document.QuerySelector("meta[http-equiv=Content-Security-Policy]")!.GetAttribute("content").Should().Contain("; font-src data:; ");
    }

    [Fact]
    public void The_script_asks_for_nothing_stores_nothing_and_makes_no_markup_of_text()
    {
        var script = Parse(Pages[0].Page).QuerySelector("script:not([type])")!.TextContent;
        script.Should().NotContainAny(
            "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "DOMParser", "eval(", "Function(", "fetch(", "XMLHttpRequest", "WebSocket", "EventSource", "sendBeacon", "import(", "Worker(",
            "localStorage", "sessionStorage", "indexedDB", "cookie", "setAttribute('style'", "setAttribute('on", "location.href =", "window.open");
        Pages.Select(report => Parse(report.Page).QuerySelector("script:not([type])")!.TextContent).Distinct().Should().ContainSingle("it is the same in every report, whatever the data");
    }

    [Fact]
    public void A_method_that_every_row_shares_stands_below_the_table_once()
    {
        foreach (var (name, page, _) in Pages)
        {
            foreach (var table in Parse(page).QuerySelectorAll("table"))
            {
                var headings = table.QuerySelectorAll("thead th").Select(heading => heading.TextContent).ToList();
                for (var column = 0; column < headings.Count; column++)
                {
                    if (!headings[column].StartsWith("Method", StringComparison.Ordinal)) continue;
                    table.QuerySelectorAll("tbody tr").Select(row => row.Children[column].TextContent).Distinct().Should().HaveCountGreaterThan(1, $"{name}: {table.QuerySelector("caption")!.TextContent}");
                }
            }
        }

        Pages.Should().Contain(report => report.Page.Contains("in every row: wilson-widened", StringComparison.Ordinal));
    }

    [Fact]
    public void Readers_of_every_kind_find_their_way()
    {
        foreach (var (name, page, _) in Pages)
        {
            var document = Parse(page);
            document.DocumentElement.GetAttribute("lang").Should().Be("en");
            document.Title.Should().NotBeEmpty();
            document.QuerySelectorAll("h1").Should().ContainSingle();
            var levels = document.QuerySelectorAll("h1, h2, h3, h4").Select(heading => heading.LocalName[1] - '0').ToArray();
            levels.Zip(levels.Skip(1)).Should().AllSatisfy(pair => pair.Second.Should().BeLessThanOrEqualTo(pair.First + 1, name));
            document.QuerySelectorAll("th").Should().AllSatisfy(cell => cell.GetAttribute("scope").Should().BeOneOf("col", "row"));
            document.QuerySelectorAll("table").Should().AllSatisfy(table => table.FirstElementChild!.LocalName.Should().Be("caption"));
            document.QuerySelectorAll("table").Should().AllSatisfy(table => table.QuerySelectorAll("tr").Select(row => row.ChildElementCount).Distinct().Should().ContainSingle(name));
            foreach (var figure in document.QuerySelectorAll("figure"))
            {
                figure.QuerySelector("svg[role=img] > title").Should().NotBeNull();
                figure.QuerySelector("figcaption a").Should().NotBeNull("each picture has its table");
            }

            document.All.Attr("id").Where(id => id is not null).Should().OnlyHaveUniqueItems(name);
            document.All.Attr("aria-labelledby").Where(ids => ids is not null).SelectMany(ids => ids!.Split(' ')).Should().AllSatisfy(id => document.GetElementById(id).Should().NotBeNull($"{name}: {id}"));
        }
    }

    [Fact]
    public void The_meaning_of_every_column_stands_below_its_table()
    {
        foreach (var (name, page, _) in Pages)
        {
            var document = Parse(page);
            document.QuerySelectorAll("[title]").Should().BeEmpty("a hover reaches no finger, key or printer");
            document.QuerySelectorAll("tbody th").Should().AllSatisfy(heading => heading.TextContent.Should().NotBeEmpty(name));
            foreach (var table in document.QuerySelectorAll("table"))
            {
                var explained = table.ParentElement!;
                do explained = explained.NextElementSibling!; while (!explained.ClassList.Contains("columns"));
                explained.QuerySelectorAll("dt").Select(term => term.TextContent).Should().Equal(table.QuerySelectorAll("thead th").Select(heading => heading.TextContent));
                explained.QuerySelectorAll("dd").Should().AllSatisfy(meaning => meaning.TextContent.Should().NotBeEmpty(name));
            }
        }
    }

    [Fact]
    public void Hostile_names_stay_text()
    {
        var (_, page, _) = Pages.Single(report => report.Name == "hostile");
        var document = Parse(page);
        var names = document.QuerySelectorAll("tbody th").Select(cell => cell.TextContent).ToHashSet();
        names.Should().Contain(["<script>alert(\"x\")</script>", "=cmd|' /C calc'!A0", "[red]bold[/]", "\"quotes\" & 'apostrophes'", "{0}", "](x)", "\uFFFDtxt.exe"]);
        document.QuerySelector("h1")!.TextContent.Should().Be("<b>Title & \"more\"</b>");
        page.Should().NotContain("\u202E").And.NotContain("<script>alert").And.NotContain("</svg><script");
        document.QuerySelectorAll("script:not([type='application/json'])").Should().ContainSingle();
    }

    [Fact]
    public void The_page_opens_with_title_span_notice_and_the_answers()
    {
        var document = Parse(Pages.Single(report => report.Name == "faulty lot and clumsy site").Page);
        var text = document.Body!.TextContent;
        Order(text, "Screening from 2026-01-05 to 2026-02-01", "holds small counts", "The answers", "What is a positive here worth?", "How far the data can be trusted", "What to do next", "In this report", "Cautions");
        document.QuerySelectorAll(".answer").Should().HaveCount(Programs.FaultyLot.Answers.Questions.Length);
        foreach (var caution in Programs.FaultyLot.Cautions.Items) text.Should().Contain(caution.Sentence.Text);
        foreach (var sentence in Programs.FaultyLot.Sentences) text.Should().Contain(sentence.Text);
    }

    [Fact]
    public void Figures_in_sentences_say_where_they_stand()
    {
        var document = Parse(Pages.Single(report => report.Name == "faulty lot and clumsy site").Page);
        var ids = Programs.FaultyLot.Sentences.SelectMany(sentence => sentence.Figures).Select(figure => figure.Id).ToHashSet();
        ids.Should().BeSubsetOf(document.QuerySelectorAll("data").Select(element => element.GetAttribute("value")));
        document.QuerySelectorAll("data").Should().HaveCountGreaterThan(60);
    }

    [Fact]
    public void Every_method_that_a_table_names_is_explained_once_with_formula_and_source()
    {
        foreach (var (name, findings) in Programs.All)
        {
            var document = Parse(Pages.Single(report => report.Name == name).Page);
            var explained = document.QuerySelectorAll("#methods ~ .method h3").Select(heading => heading.Id!["method-".Length..]).ToArray();
            var named = findings.Tables.SelectMany(table => TableMethods.Of(table)).Distinct().ToArray();
            explained.Should().BeEquivalentTo(named, name);
            document.QuerySelectorAll(".method").Should().AllSatisfy(method =>
            {
                method.QuerySelector(".formula")!.TextContent.Should().NotBeEmpty();
                method.TextContent.Should().Contain("Source: ");
            });
        }
    }

    [Fact]
    public void Every_section_with_numbers_links_to_their_methods()
    {
        var document = Parse(Pages.Single(report => report.Name == "faulty lot and clumsy site").Page);
        foreach (var page in ScreenStats.Reporting.Pages.AllPages.Of(Programs.FaultyLot).SelectMany(group => group.Pages))
        {
            var linked = document.GetElementById(page.Id)!.ParentElement!.QuerySelectorAll(".methods a").Select(link => link.GetAttribute("href")!["#method-".Length..]);
            linked.Should().BeEquivalentTo(page.Finding.Tables.SelectMany(table => TableMethods.Of(table)).Distinct(), page.Id);
        }
    }

    [Fact]
    public void Without_small_counts_there_is_no_notice_of_them()
    {
        var settings = Programs.FaultyLot.Settings;
        var findings = Programs.FaultyLot with { Settings = settings with { Report = settings.Report with { SuppressBelow = 5 } } };
        Parse(Text(Report.Files(findings, new ReportInputs()))).QuerySelectorAll(".notice").Should().BeEmpty();
    }

    [Fact]
    public void The_outline_is_the_one_that_was_read_and_agreed()
    {
        var document = Parse(Pages.Single(report => report.Name == "faulty lot and clumsy site").Page);
        var outline = new StringBuilder();
        foreach (var element in document.QuerySelectorAll("h1, h2, h3, figure, table"))
        {
            outline.Append(element.LocalName switch
            {
                "figure" => "  picture: " + element.QuerySelector("title")!.TextContent,
                "table" => "  table: " + element.QuerySelector("caption")!.TextContent + " | " + string.Join(", ", element.QuerySelectorAll("thead th").Select(cell => cell.TextContent)),
                var heading => new string('#', heading[1] - '0') + " " + element.TextContent,
            }).Append('\n');
        }

        Golden.Check("report/outline.txt", Regex.Replace(outline.ToString(), "[ \t]+\n", "\n"));
    }

    private static string Text(SortedDictionary<string, byte[]> files) => Encoding.UTF8.GetString(files["report.html"]);

    private static IDocument Parse(string page) => new HtmlParser().ParseDocument(page);

    private static void Order(string text, params string[] parts)
    {
        var at = -1;
        foreach (var part in parts)
        {
            var next = text.IndexOf(part, at + 1, StringComparison.Ordinal);
            next.Should().BeGreaterThan(at, $"\"{part}\" comes next");
            at = next;
        }
    }
}
